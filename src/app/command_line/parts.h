#pragma once

#include "app/commands.h"

#include <functional>
#include <memory>

namespace CLI {
class App;
class Option;
} // namespace CLI

namespace thawslip::app {

/// What the parsed command line asks for; run after parsing, so that a fault in a later option is
/// found before anything happens.
using Command = std::function<ExitStatus(const Settings&, Console)>;

/// Adds what every printing command takes: the days, the stock, where the print goes.
void add_print_options(CLI::App& command, PrintOptions& options);

/// Adds `--dish`, `--bag`, `--from` and `--only-new`, which name the bags that are printed.
void add_part(CLI::App& command, service::Part& part);

/// Adds `--copies`.
void add_copies(CLI::App& command, const std::function<void(int)>& take);

/// Adds `--first-cell` and `--skip`, which name the cells that are printed on.
void add_cells(CLI::App& command, const std::function<void(int)>& take_first,
               std::vector<int>& skip);

/// Adds `--json`, which says how the command answers.
std::shared_ptr<AnswerAs> add_json(CLI::App& command, const char* about = "for other programs");

/// Adds `--trial`.
void add_trial(CLI::App& command, PrintOptions& options);

/// Adds `--same-batch`, which says which bags a dish that was printed before has.
CLI::Option* add_same_batch(CLI::App& command, archive::WhichBatch& which);

/// Adds `lists` with its options to the program; when it is given, `chosen` becomes it.
void add_lists(CLI::App& app, Command& chosen);

struct DeskOptions;
/// Adds `desk`; when it is given, `chosen` becomes it, and settings need not be right.
/// \param take_overrides says where the settings are and how they are read again, with what stands
///                       before or after any command
void add_desk(CLI::App& app, Command& chosen, bool& needs_settings,
              const std::function<void(DeskOptions& options)>& take_overrides);

/// Adds `foods` to the program; when it is given, `chosen` becomes it.
void add_foods(CLI::App& app, Command& chosen);

struct SetupOptions;
/// Adds `setup`; when it is given, `chosen` becomes it, and settings need not be right.
/// \param take_overrides puts what stands before or after any command into the options
void add_setup(CLI::App& app, Command& chosen, bool& needs_settings,
               const std::function<void(SetupOptions&)>& take_overrides);

/// Adds `stock` with its commands to the program; the one that is named becomes `chosen`.
void add_stock(CLI::App& app, Command& chosen);

/// Adds `--stock` and `--layout`.
void add_stock_choice(CLI::App& command, Look& look);

/// Adds `-o` and `--print`, of which a printing command needs one.
void add_destination(CLI::App& command, std::string& output, std::optional<std::string>& printer,
                     const char* endings = ".pdf, .svg or .txt");

/// Adds `--overwrite`, for whoever writes files whose names nobody types.
void add_overwrite(CLI::App& command, Overwrite& overwrite);

/// \throws CLI::RequiredError where neither is given
void require_destination(const std::string& output, const std::optional<std::string>& printer);

/// Gives every command its examples and notes. Called when all commands are there.
void add_examples(CLI::App& app);

/// Adds `plan` with its options to the program; when it is given, `chosen` becomes it.
void add_plan(CLI::App& app, Command& chosen);

/// Adds `reprint`, `freezer` and `archive`; the one that is named on the command line is put into
/// `chosen`.
void add_archive_commands(CLI::App& app, Command& chosen);

} // namespace thawslip::app
