#pragma once

#include "app/exit_status.h"
#include "app/files/settings_file.h"
#include "archive/values.h"
#include "service/print/job.h"
#include "service/print/look.h"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::app {

using service::Look;
using service::Settings;
using service::What;

/// Where a command speaks: results in plain words to `out`, what went wrong to `err`.
struct Console {
    std::ostream& out;
    std::ostream& err;
};

/// Whether a print goes into the archive. A trial does not.
enum class Record { AsSettingsSay, No };

/// Whether files of others, whose names nobody typed, may be written over.
enum class Overwrite { No, Yes };

/// What all printing commands take.
struct PrintOptions {
    std::vector<std::string> days;
    std::string output;                 ///< file; "-": standard output; empty: none
    std::string called = {};            ///< what the output is called in words; empty: its name
    std::optional<std::string> printer; ///< nothing: none; empty: the usual one
    Look look;
    Overwrite overwrite = Overwrite::No;
    Record record = Record::AsSettingsSay;
    archive::WhichBatch which = {}; ///< where bags of a dish were printed before
};

/// Whether `check` also says which row of which list gave a date, and how well each part reads; or,
/// with numbers, how large each is set and how the code is made too.
enum class Why { Untold, Told, WithNumbers };

enum class AnswerAs { Words, Json };

/// What a command does where words fit several bags.
enum class WhichOfSeveral {
    Ask,    ///< on a terminal, by their numbers; elsewhere they are refused with their ids
    Oldest, ///< takes the oldest
    All,    ///< takes every one
};

/// What `plan` is asked.
struct PlanOptions {
    std::vector<std::string> days; ///< files; or ids of bags, or words of a dish, of the archive
    std::string eat;               ///< local date and time, as written
    std::string now;               ///< the same; empty: the system's clock
    std::string dish;              ///< words of the dishes meant; empty: all of them
    int bags = 1;                  ///< of each dish
    std::string calendar;          ///< file to write; empty: none
    PrintOptions sheet = {};       ///< where the plan is drawn, and how; its days are not used
    AnswerAs answer = AnswerAs::Words;
};

/// What is typed when something happens in a kitchen, or all that is known of that.
ExitStatus help(const std::string& words, Console console);

/// What `new` is asked.
struct NewOptions {
    std::string file;                ///< to be written; "-": standard output
    std::vector<std::string> dishes; ///< names
    int count = 0;                   ///< of dishes; 0: as many as are named
    std::string kitchen;
    bool ask = false; ///< for all that a day needs
};

/// Writes a day to start from: a sample, or a block for each dish to be filled in.
/// \param answers where the answers come from, if it asks
ExitStatus new_day(const NewOptions& options, const Settings& settings, std::istream& answers,
                   Console console);
/// Prints what `what` names of days.
ExitStatus print_days(What what, const PrintOptions& options, const Settings& settings,
                      Console console);
/// The door list of all that the archive knows to be frozen.
ExitStatus print_frozen(const PrintOptions& options, const Settings& settings, Console console);
/// All that would be refused or cautioned. What `options` says of file and printer is not used.
ExitStatus check(const PrintOptions& options, Why why, AnswerAs answer, const Settings& settings,
                 Console console);
/// The kinds of food, or those that `words` have to do with: how long each keeps by the list that
/// is set, its safe minimum, and the words that mean it.
ExitStatus foods(const std::string& words, AnswerAs answer, const Settings& settings,
                 Console console);
/// What each label's code carries on the stock chosen. What `options` says of file and printer is
/// not used.
ExitStatus text(const PrintOptions& options, const Settings& settings, Console console);
/// Tells the cook steps of bags: from the codes in a photograph (PNG, JPEG), from the text that a
/// scanner typed ("-": standard input), or from the archive by a typed bag id.
ExitStatus read(const std::string& what, WhichOfSeveral which, AnswerAs answer,
                const Settings& settings, Console console);

/// When to thaw, start, add and serve, so that all dishes are ready at one time.
ExitStatus plan(const PlanOptions& options, const Settings& settings, Console console);
ExitStatus stock_list(Console console);

/// A stock in words and, where `output` is not empty, drawn to scale.
ExitStatus stock_show(const std::string& name_or_file, const std::string& output,
                      const Settings& settings, Console console);

/// A page with rulers and crosses, by which to measure a printer; `paper` is a paper's name. Of
/// `options` only file and printer are used.
ExitStatus stock_ruler(const std::string& paper, const PrintOptions& options,
                       const Settings& settings, Console console);

} // namespace thawslip::app
