#include "app/commands/setup_command.h"

#include "app/commands/deliver.h"
#include "app/commands/setup_questions.h"
#include "app/files/data_folder.h"
#include "app/files/kept_files.h"
#include "app/files/output_guard.h"
#include "app/files/settings_file.h"
#include "app/files/whole_file.h"
#include "app/locale.h"
#include "base/folder.h"
#include "base/letters.h"
#include "base/nearest.h"
#include "service/print/choices.h"
#include "service/print/job.h"
#include "service/setup/settings_edits.h"
#include "service/setup/settings_text.h"
#include "spool/printer.h"
#include "toml/edit.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <iterator>
#include <map>
#include <ostream>
#include <unistd.h>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

/// What is wrong and what to do about it, within a sentence of another's.
std::string in_one_line(const service::Messages& messages) {
    std::string line;
    for (const auto& [what, text] : messages.all()) {
        line += (line.empty() ? "" : "; ") + what.message;
        for (const auto& hint : what.hints) {
            line += "; " + hint;
        }
    }
    return line;
}

/// The printers there are; why there are none is said.
std::vector<std::string> printers_there_are(Console console) {
    const auto printers = spool::printers();
    if (!printers) {
        console.err << "note: no printer is known here, so none is asked for: " +
                           why_no_printer(printers.fault()) + "\n";
        return {};
    }
    return printers.value();
}

/// What of settings is asked for.
class Setup {
public:
    Setup(const SetupOptions& options, Settings settings, Questions& questions, Console console)
        : options_{options}, settings_{std::move(settings)},
          questions_{questions}, printers_{printers_there_are(console)}, around_{surroundings()} {}

    Settings run() {
        ask_paper();
        ask_language();
        ask_job(settings_.labels, "labels", options_.label_printer, options_.label_dots);
        ask_stock(settings_.labels.stock, "labels", service::What::Labels, options_.label_stock);
        ask_cards();
        ask_stock(settings_.cook_day_cards.stock, "cook-day-cards", service::What::CookDayCards,
                  options_.cook_day_stock);
        ask_stock(settings_.finishing_cards.stock, "finishing-cards", service::What::FinishingCards,
                  options_.finishing_stock);
        ask_job(settings_.lists, "lists", options_.list_printer, std::nullopt);
        return settings_;
    }

private:
    void ask_paper() {
        const auto why = settings_.paper_from == service::PaperFrom::Locale
                             ? questions_.say("by-locale", {settings_.locale})
                             : std::string{};
        settings_.paper =
            questions_.ask({questions_.say("paper"), settings_.paper, why}, options_.paper,
                           [](const std::string& answer) -> Answer {
                               const auto word = lower(answer);
                               if (word != "letter" && word != "a4") {
                                   return Failure{fmt::format(
                                       "\"{}\" is no paper: expected letter or a4", answer)};
                               }
                               return word;
                           });
        settings_.paper_from = service::PaperFrom::Settings;
    }

    void ask_language() {
        const bool is_usual = settings_.file.empty() && settings_.second_language.empty();
        const auto proposed = is_usual ? language_of_locale(settings_)
                              : settings_.second_language.empty()
                                  ? settings_.language
                                  : settings_.language + "," + settings_.second_language;
        const auto languages =
            questions_.ask({questions_.say("language"), proposed, {}}, options_.language,
                           [](const std::string& answer) -> Answer {
                               Settings tried;
                               std::string text;
                               std::ranges::copy_if(answer, std::back_inserter(text),
                                                    [](char c) { return c != ' '; });
                               if (const auto fault = set_languages(tried, text)) {
                                   return Failure{*fault};
                               }
                               return text;
                           });
        set_languages(settings_, languages);
        questions_.speak(settings_.language);
    }

    /// Both kinds of cards are asked for at once. Where the answer is as before, finishing cards
    /// stay with the printer that they have.
    void ask_cards() {
        auto& asked = settings_.cook_day_cards;
        const auto before = asked;
        ask_job(asked, "cards", options_.card_printer, std::nullopt);
        if (asked != before) {
            settings_.finishing_cards.printer = asked.printer;
            settings_.finishing_cards.dots_per_inch = asked.dots_per_inch;
        }
    }

    void ask_job(service::JobSettings& job, const char* what,
                 const std::optional<std::string>& told, const std::optional<double>& dots) {
        if (!printers_.empty() || told) {
            ask_printer(job, what, told);
        }
        const bool is_known = known_dots_.contains(job.printer);
        if (dots || (!job.printer.empty() && !is_known)) {
            ask_dots(job, what, dots);
            known_dots_[job.printer] = job.dots_per_inch;
        } else if (is_known) {
            job.dots_per_inch = known_dots_.at(job.printer);
        }
    }

    void ask_printer(service::JobSettings& job, const char* what,
                     const std::optional<std::string>& told) {
        // A job without a printer in settings that are there is meant to have none.
        const bool is_set = !job.printer.empty() || !settings_.file.empty();
        const auto usual = is_set ? job.printer : usual_printer_;
        job.printer = questions_.ask(
            {questions_.say("printer",
                            {questions_.say(what),
                             printers_.empty() ? questions_.say("its-name") : numbered(printers_)}),
             usual.empty() ? "-" : usual,
             {}},
            told.value_or(""), [this](const std::string& answer) -> Answer {
                if (answer == "-") {
                    return std::string{};
                }
                if (const auto named = named_by(answer, printers_)) {
                    return *named;
                }
                if (printers_.empty()) { // CUPS says when it comes to printing
                    return answer;
                }
                return Failure{fmt::format("there is no printer \"{}\": expected {}", answer,
                                           list_of(printers_))};
            });
        usual_printer_ = job.printer;
    }

    void ask_dots(service::JobSettings& job, const char* what, const std::optional<double>& told) {
        const auto proposed = job.dots_per_inch.value_or(service::usual_dots_per_inch);
        const auto dots = questions_.ask(
            {questions_.say("dots", {questions_.say(what)}), fmt::format("{}", proposed), {}},
            told ? fmt::format("{}", *told) : "", [](const std::string& answer) -> Answer {
                const auto dots_read = dots_in(answer);
                return dots_read ? Answer{fmt::format("{}", *dots_read)}
                                 : Answer{Failure{dots_fault(answer)}};
            });
        const auto number = dots_in(dots);
        job.dots_per_inch = number == service::usual_dots_per_inch ? std::nullopt : number;
    }

    void ask_stock(std::string& stock, const char* what, service::What kind,
                   const std::string& told) {
        const auto usual = service::usual_stock(kind, settings_);
        const auto chosen =
            questions_.ask({questions_.say("stock", {questions_.say(what)}), usual, {}}, told,
                           [this](const std::string& answer) -> Answer {
                               service::OwnFiles own;
                               const auto found = service::choose_stock(answer, around_, own);
                               return found ? Answer{lasting_name(answer)}
                                            : Answer{Failure{in_one_line(found.messages)}};
                           });
        auto without = settings_;
        job_of(without, kind).stock.clear();
        stock = chosen == service::usual_stock(kind, without) ? std::string{} : chosen;
    }

    static service::JobSettings& job_of(Settings& settings, service::What kind) {
        return kind == service::What::Labels           ? settings.labels
               : kind == service::What::FinishingCards ? settings.finishing_cards
                                                       : settings.cook_day_cards;
    }

    const SetupOptions& options_;
    Settings settings_;
    Questions& questions_;
    std::vector<std::string> printers_;
    std::string usual_printer_; ///< that was named last
    std::map<std::string, std::optional<double>> known_dots_;
    service::Surroundings around_;
};

/// The settings of before, under a name that is free.
std::string put_aside(const std::string& file) {
    auto aside = file + ".before";
    for (int number = 2; fs::exists(aside); ++number) {
        aside = fmt::format("{}.before-{}", file, number);
    }
    fs::rename(file, aside);
    return aside;
}

/// Whether the settings that are there may be changed; where not, that is said.
bool may_replace(const std::string& file, const SetupOptions& options, Questions& questions,
                 Console console) {
    std::error_code error;
    if (!fs::exists(fs::symlink_status(file, error)) || options.overwrite == Overwrite::Yes) {
        return true;
    }
    if (!options.takes_proposals && questions.agrees(questions.say("aside", {file}), false)) {
        return true;
    }
    console.err << fmt::format("error: {} already exists; nothing written\n"
                               "    hint: change it there, or --overwrite, which keeps the one of "
                               "before beside it\n",
                               file);
    return false;
}

/// A text for the settings file, and what is said of it and of the one before.
struct Written {
    std::string text;
    const char* about;
    const char* before;
};

/// Where there are settings, theirs with the answers in them: the cook has set other keys by hand,
/// without which bags of another kitchen may get the same ids. \throws WrongAnswer where they
/// cannot be changed so
Written answered_settings(const std::string& file, const Settings& answers, Console console) {
    std::error_code error;
    const bool is_there = fs::exists(fs::symlink_status(file, error));
    const auto before = load_settings(file, Missing::IsAFault);
    if (!before) {
        if (is_there) {
            console.err << fmt::format("note: {} could not be read as settings: {}\n", file,
                                       in_one_line(before.messages));
        }
        return {settings_text(answers), "written; each key has a remark that says what it is",
                "the settings of before; copy from there what you set by hand"};
    }
    auto edited = toml::edit(before.value->text, settings_edits(*before.value, answers));
    if (!edited) {
        throw WrongAnswer{fmt::format("{}: {}", file, edited.fault())};
    }
    return {std::move(edited).value().text,
            "written; what is not asked for is as it was, and so are your remarks",
            "the settings of before"};
}

void write(const std::string& file, const Settings& answers, Console console) {
    const auto [text, about, of_before] = answered_settings(file, answers, console);
    fs::create_directories(folder_of(file));
    std::error_code error;
    if (fs::exists(fs::symlink_status(file, error))) {
        console.out << fmt::format("{}: {}\n", put_aside(file), of_before);
    }
    write_whole_file(file, text);
    console.out << fmt::format("{}: {}\n", file, about);
}

ExitStatus offer_ruler(const SetupOptions& options, const Settings& settings, Questions& questions,
                       Console console) {
    PrintOptions ruler;
    ruler.output = options.ruler;
    if (ruler.output.empty() && !options.takes_proposals) {
        ruler.output = questions.agrees(questions.say("ruler"), false) ? "ruler.pdf" : "";
    }
    return ruler.output.empty() ? ExitStatus::Done
                                : stock_ruler(settings.paper, ruler, settings, console);
}

} // namespace

ExitStatus setup(const SetupOptions& options, const Settings& now, std::istream& answers,
                 Console console) {
    const auto file = options.file.empty() ? usual_settings_file() : options.file;
    if (file.empty()) {
        console.err << "error: there is no home folder to keep settings in\n"
                       "    hint: name a file with --settings FILE\n";
        return ExitStatus::Refused;
    }
    if (const auto refused = refuse_output({options.ruler, drawing_endings}, now, console)) {
        return *refused; // before anything is asked
    }
    Questions questions{answers, console.out, options.takes_proposals,
                        ::isatty(STDIN_FILENO) == 1 ? Echo::No : Echo::Yes,
                        options.language.empty() ? language_of_locale(now) : now.language};
    try {
        if (!may_replace(file, options, questions, console)) {
            return ExitStatus::Refused;
        }
        const auto settings = Setup{options, now, questions, console}.run();
        write(file, settings, console);
        const auto status = offer_ruler(options, settings, questions, console);
        console.out << "Next: thawslip new saturday.toml\n";
        return status;
    } catch (const WrongAnswer& wrong) {
        console.err << fmt::format("error: {}; nothing written\n", wrong.what());
        return ExitStatus::Refused;
    }
}

} // namespace thawslip::app
