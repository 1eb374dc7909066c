#include "app/command_line/command_line.h"

#include "app/archive_place.h"
#include "app/clock.h"
#include "app/command_line/help_text.h"
#include "app/command_line/joined_words.h"
#include "app/command_line/parse_fault.h"
#include "app/command_line/parts.h"
#include "app/commands/setup_command.h"
#include "app/commands/setup_questions.h"
#include "app/desk/desk_options.h"
#include "app/files/settings_file.h"
#include "app/files/shown_buffer.h"
#include "app/locale.h"
#include "app/question.h"
#include "app/server_archive.h"
#include "archive/address.h"
#include "base/letters.h"
#include "base/list.h"
#include "base/nearest.h"
#include "base/split.h"
#include "intake/day_file.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <map>
#include <ostream>
#include <span>

namespace thawslip::app {
namespace {

/// What is wrong with the text of --dpi; empty where nothing is. (CLI::Range lets "nan" through.)
/// What is laid out, and on what.
void add_layout_options(CLI::App& command, PrintOptions& options) {
    command.add_option("DAY.toml", options.days, "descriptions of packing days (TOML)")
        ->required()
        ->option_text("DAY.toml...");
    add_stock_choice(command, options.look);
    command
        .add_option("--dpi", options.look.dots_per_inch,
                    "dots per inch of the printer (203.2, 300, 600)")
        ->check(dots_fault)
        ->option_text("N");
    command.add_flag("--small-modules", options.look.small_modules,
                     "allow code modules of 0.33 mm instead of 0.4 mm");
    command.add_flag_callback(
        "--large-print", [&options] { options.look.large_print = true; },
        "type 1.4 times as large at the least; a print that does not fit names larger stock");
}

} // namespace

void add_stock_choice(CLI::App& command, Look& look) {
    command
        .add_option("--stock", look.stock,
                    "the sheet or roll to print on: a name of `thawslip stock list`, or a file")
        ->option_text("NAME|FILE");
    command
        .add_option("--layout", look.layout,
                    "a layout other than the one for the cell's shape: a name, or a file")
        ->option_text("NAME|FILE");
}

void add_print_options(CLI::App& command, PrintOptions& options) {
    add_layout_options(command, options);
    add_destination(command, options.output, options.printer);
    add_overwrite(command, options.overwrite);
    add_part(command, options.look.part);
    add_copies(command, [&options](int copies) { options.look.part.copies = copies; });
    add_cells(
        command, [&options](int cell) { options.look.first_cell = cell; }, options.look.skip);
}

void add_trial(CLI::App& command, PrintOptions& options) {
    command.add_flag_callback(
        "--trial", [&options] { options.look.is_trial = true; },
        "mark every sheet as a trial, not for food, and record nothing");
}

CLI::Option* add_same_batch(CLI::App& command, archive::WhichBatch& which) {
    using Kind = archive::WhichBatch::Kind;
    return command
        .add_option_function<std::vector<std::string>>(
            "--same-batch",
            [&which](const std::vector<std::string>& named) {
                which.kind = which.kind == Kind::New ? Kind::New : Kind::OfBag;
                for (const auto& text : named) {
                    const auto bags = parts_between_commas(text);
                    which.bags.insert(which.bags.end(), bags.begin(), bags.end());
                }
            },
            "these are the bags of the dish that has a bag of this id; once for each such dish, or "
            "a comma between")
        ->allow_extra_args(false)
        ->option_text("BAG");
}

namespace {

void add_recording(CLI::App& command, PrintOptions& options) {
    command.add_flag_callback(
        "--no-archive", [&options] { options.record = Record::No; },
        "do not record this print; it cannot be reprinted");
    add_trial(command, options);
    command.add_flag_callback(
        "--new-batch", [&options] { options.which.kind = archive::WhichBatch::Kind::New; },
        "these are other bags than those of the same dish and day that were printed before; with "
        "--same-batch, those of the other dishes");
    add_same_batch(command, options.which);
}

void add_new(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("new", "write a commented day to start from");
    auto options = std::make_shared<NewOptions>();
    command->add_option("file", options->file, "the file to write")
        ->required()
        ->option_text("DAY.toml");
    auto* count = command->add_option("--dishes", options->count, "how many dishes it is for")
                      ->check(CLI::Range(1, intake::Limits::packages))
                      ->option_text("N");
    auto* dishes =
        command->add_option("--dish", options->dishes, "what a dish is called; once for each")
            ->allow_extra_args(false)
            ->option_text("NAME");
    command->add_option("--kitchen", options->kitchen, "whose kitchen")->option_text("NAME");
    command
        ->add_flag("--ask", options->ask,
                   "ask for all that a day needs; so it does where nothing else is said and "
                   "somebody sits at the terminal")
        ->excludes(dishes);
    command->callback([=, &chosen] {
        options->ask =
            options->ask || (count->count() + dishes->count() == 0 && somebody_is_there());
        chosen = [options](const Settings& settings, Console console) {
            return new_day(*options, settings, std::cin, console);
        };
    });
}

void add_help(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("help", "what to type when a label is lost, a sheet jams…");
    auto words = std::make_shared<std::vector<std::string>>();
    command->add_option("words", *words, "what happened, in a word or two")
        ->option_text("WORDS...");
    command->callback([words, &chosen] {
        chosen = [text = joined(*words, " ")](const Settings&, Console console) {
            return help(text, console);
        };
    });
}

void add_labels(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("labels", "print a label for every bag");
    auto options = std::make_shared<PrintOptions>();
    add_print_options(*command, *options);
    add_recording(*command, *options);
    command->callback([options, &chosen] {
        require_destination(options->output, options->printer);
        chosen = [options](const Settings& settings, Console console) {
            return print_days(What::Labels, *options, settings, console);
        };
    });
}

void add_cards(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("cards", "print finishing cards and cook-day cards");
    auto options = std::make_shared<PrintOptions>();
    auto finishing = std::make_shared<bool>(false);
    auto cook_day = std::make_shared<bool>(false);
    add_print_options(*command, *options);
    add_recording(*command, *options);
    auto* only_finishing = command->add_flag("--finishing", *finishing, "finishing cards only");
    command->add_flag("--cook-day", *cook_day, "cook-day cards only")->excludes(only_finishing);
    command->callback([=, &chosen] {
        require_destination(options->output, options->printer);
        const auto what = *finishing  ? What::FinishingCards
                          : *cook_day ? What::CookDayCards
                                      : What::Cards;
        chosen = [options, what](const Settings& settings, Console console) {
            return print_days(what, *options, settings, console);
        };
    });
}

/// Takes each of these words, whatever its case, and no other.
CLI::Validator one_of(std::vector<std::string> names) {
    return {[names = std::move(names)](std::string& text) {
                const auto meant = std::ranges::find(names, lower(text));
                if (meant == names.end()) {
                    return fmt::format("\"{}\" is not known: {}", text, near_names(text, names));
                }
                text = *meant;
                return std::string{};
            },
            ""};
}

void add_check(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand(
        "check", "report everything that would be refused or cautioned; write nothing");
    auto options = std::make_shared<PrintOptions>();
    auto why = std::make_shared<std::string>();
    add_layout_options(*command, *options);
    auto* tell_why =
        command
            ->add_flag("--why{dates}", *why,
                       "also say where each date comes from, and how well all reads; --why=all, "
                       "how large all is set and how the code is made too")
            ->transform(one_of({"dates", "all"}))
            ->disable_flag_override(false);
    auto answer = add_json(*command, "answer in JSON");
    command->get_option("--json")->excludes(tell_why);
    command->callback([=, &chosen] {
        chosen = [=](const Settings& settings, Console console) {
            const auto told = *why == "all" ? Why::WithNumbers : Why::Told;
            return check(*options, why->empty() ? Why::Untold : told, *answer, settings, console);
        };
    });
}

void add_text(CLI::App& app, Command& chosen) {
    auto* command =
        app.add_subcommand("text", "show what each code carries, one bag after the other");
    auto options = std::make_shared<PrintOptions>();
    add_layout_options(*command, *options);
    command->callback([options, &chosen] {
        chosen = [options](const Settings& settings, Console console) {
            return text(*options, settings, console);
        };
    });
}

void add_read(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("read", "the cook steps of a bag, from its code or its id");
    auto what = std::make_shared<std::vector<std::string>>();
    auto which = std::make_shared<WhichOfSeveral>(WhichOfSeveral::Ask);
    command
        ->add_option("what", *what,
                     "a photograph of codes (PNG or JPEG), a bag's id, words of a dish; - for the "
                     "text that a scanner types")
        ->required()
        ->option_text("PHOTO|BAG|WORDS|-");
    command->add_flag_callback(
        "--oldest", [which] { *which = WhichOfSeveral::Oldest; },
        "of several dishes that the words fit, the oldest");
    auto answer = add_json(*command, "answer in JSON, one line a bag");
    command->callback([=, &chosen] {
        chosen = [=](const Settings& settings, Console console) {
            return read(joined(*what, " "), *which, *answer, settings, console);
        };
    });
}

/// What words that are no commands, but might be, are done by.
constexpr std::pair<std::string_view, std::string_view> done_by[] = {
    {"thrown", "freezer discarded"},
    {"print", "labels DAY.toml --print"},
    {"scan", "read PHOTO"},
    {"import", "archive import FOLDER"},
    {"export", "archive export FOLDER"},
    {"backup", "archive backup FILE"},
    {"eaten", "freezer eaten BAG"},
    {"out", "freezer out BAG"},
    {"find", "freezer find WORDS"},
    {"next", "freezer next"}};

std::string hint_for(const std::string& word, const std::vector<std::string>& names) {
    for (const auto& [said, command] : done_by) {
        if (word == said) {
            return fmt::format("thawslip {} does that", command);
        }
    }
    return near_names(word, names);
}

/// What is said of a first word that is no command, or of the word after it that is none of its
/// own; the parser alone would only say that a command is missing.
/// \param group the words before, with a blank: "freezer "
std::optional<std::string> unknown_command(const CLI::App& app, std::span<const char* const> words,
                                           const std::string& group = {}) {
    const std::string word = words.empty() ? "" : words.front();
    std::vector<std::string> names;
    for (const auto* command : app.get_subcommands([](const CLI::App*) { return true; })) {
        names.push_back(command->get_name());
        if (word == names.back()) {
            return unknown_command(*command, words.subspan(1), word + " ");
        }
    }
    if (names.empty() || word.empty() || word.starts_with('-')) {
        return std::nullopt;
    }
    return fmt::format("error: there is no command \"{}{}\"\n    hint: {}\n", group, word,
                       hint_for(word, names));
}

/// Options that stand before or after any command and override the settings file.
struct Overrides {
    std::string settings_file;
    std::string archive;
    std::map<std::string, std::string> settings; ///< by SettingOption::key; empty: as in the file
};

/// What is wrong with the text of --language; empty where nothing is.
std::string are_languages(const std::string& text) {
    Settings settings;
    return set_languages(settings, text).value_or("");
}

/// What is wrong with the text of --archive; empty where nothing is.
std::string is_archive(const std::string& text) {
    const auto place = archive_place(text, "");
    return place ? "" : place.fault();
}

std::vector<std::string> names_of(std::span<const toml::Word> words) {
    return mapped(words, &toml::Word::word);
}

/// Takes each word that the setting takes; the help names them all.
void take_one_of(CLI::Option& option, std::span<const toml::Word> words) {
    const auto names = names_of(words);
    option.transform(one_of(names))->option_text(joined(names, "|"));
}

void add_overrides(CLI::App& app, Overrides& overrides) {
    app.add_option("--settings", overrides.settings_file,
                   "settings to use instead of the default file")
        ->option_text("FILE");
    take_one_of(*app.add_option("--paper", overrides.settings["paper"],
                                "the paper whose stocks are the default ones"),
                service::paper_words());
    app.add_option("--language", overrides.settings["language"],
                   "the language of what is printed: en, es, de; two for cards in both: en,es")
        ->check(are_languages)
        ->option_text("en|es|de");
    take_one_of(
        *app.add_option("--units", overrides.settings["units"], "the units of what is printed"),
        service::unit_words());
    app.add_option("--archive", overrides.archive,
                   "the archive's file or address, instead of the default one")
        ->check(is_archive)
        ->option_text("FILE");
    app.add_option("--storage-list", overrides.settings["storage_list"],
                   "the list of storage times that is asked first: us, canada, oregon, uk…")
        ->transform(one_of(names_of(service::storage_list_words())))
        ->option_text("NAME");
}

service::Outcome<Settings> settings_with(const Overrides& overrides) {
    const bool named = !overrides.settings_file.empty();
    auto loaded = named ? load_settings(overrides.settings_file, Missing::IsAFault)
                        : load_settings(usual_settings_file(), Missing::IsFine);
    if (!loaded) {
        return loaded;
    }
    auto& settings = *loaded.value;
    if (!overrides.archive.empty()) {
        settings.archive =
            archive_place(overrides.archive, "").value(); // the parser has checked it
    }
    for (const auto& option : service::setting_options()) {
        if (const auto& text = overrides.settings.at(option.key); !text.empty()) {
            option.set(settings, text); // the parser has checked it
        }
    }
    if (!overrides.settings.at("paper").empty()) {
        settings.paper_from = service::PaperFrom::Option;
    }
    take_paper_of_locale(settings);
    settings.kitchen.today = today();
    return loaded;
}

/// The parser with every command. What a command line names goes into its members.
struct Parser {
    CLI::App app{"Labels, finishing cards and cook-day cards for food frozen in bulk.", "thawslip"};
    Overrides overrides;
    bool needs_settings = true; ///< settings that cannot be read stand against the command
    Command chosen;

    Parser() {
        // First of all, for commands take over how their program tells about itself.
        app.formatter_fn([](const CLI::App* command, const std::string&, CLI::AppFormatMode) {
            return help_text(describe(*command));
        });
        app.set_help_flag("-h,--help", "show this help and exit");
        app.option_defaults()->disable_flag_override(); // no "--only-new=2"
        app.fallthrough();
        app.require_subcommand(1);
        app.set_version_flag("--version", "thawslip " THAWSLIP_VERSION,
                             "show the version and exit");
        add_overrides(app, overrides);
        add_new(app, chosen);
        add_desk(app, chosen, needs_settings, [this](DeskOptions& options) {
            options.settings = [this] { return settings_with(overrides); };
            options.settings_file = overrides.settings_file;
        });
        add_labels(app, chosen);
        add_cards(app, chosen);
        add_lists(app, chosen);
        add_check(app, chosen);
        add_foods(app, chosen);
        add_text(app, chosen);
        add_read(app, chosen);
        add_plan(app, chosen);
        add_stock(app, chosen);
        add_archive_commands(app, chosen);
        add_help(app, chosen);
        add_setup(app, chosen, needs_settings, [this](SetupOptions& options) {
            options.file = overrides.settings_file;
            options.paper = overrides.settings.at("paper");
            options.language = overrides.settings.at("language");
        });
        add_examples(app);
    }
    Parser(const Parser&) = delete; // the commands point into it
    Parser& operator=(const Parser&) = delete;
};

/// Whether the command is about the archive. `desk` brings both together when it asks, and what
/// says for itself what came of it is left to do so.
bool asks_archive(const CLI::App& app) {
    constexpr std::array asking = {"labels", "cards", "lists",   "check",  "text",
                                   "read",   "plan",  "reprint", "freezer"};
    const auto* command = app.get_subcommands().front();
    if (command->get_name() != "archive") {
        return std::ranges::find(asking, command->get_name()) != asking.end();
    }
    const auto& about = command->get_subcommands().front()->get_name();
    return about != "sql" && about != "send";
}

/// Reads the command line into `parser`.
/// \returns nothing where there is a command to run, else the status to leave with
std::optional<ExitStatus> parse(Parser& parser, int argc, const char* const* argv,
                                Console console) {
    if (const auto unknown = unknown_command(parser.app, {argv + std::min(argc, 1), argv + argc})) {
        console.err << *unknown;
        return ExitStatus::Usage;
    }
    try {
        auto words =
            with_numbers_joined(with_printers_joined({argv + std::min(argc, 1), argv + argc}));
        std::ranges::reverse(words); // as CLI11 takes them
        parser.app.parse(std::move(words));
        return std::nullopt;
    } catch (const CLI::ParseError& error) {
        if (parser.app.get_version_ptr()->count() > 0) { // whatever else is missing
            console.out << parser.app.version() << "\n";
            return ExitStatus::Done;
        }
        if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
            parser.app.exit(error, console.out, console.err); // help, or the version
            return ExitStatus::Done;
        }
        console.err << parse_fault_text(parser.app, error);
        return ExitStatus::Usage;
    }
}

} // namespace

ExitStatus run(int argc, const char* const* argv, Console to) {
    ShownBuffer shown_out{to.out};
    ShownBuffer shown_err{to.err};
    std::ostream out{&shown_out};
    std::ostream err{&shown_err};
    const Console console{out, err};
    Parser parser;
    if (const auto status = parse(parser, argc, argv, console)) {
        return *status;
    }
    const auto settings = settings_with(parser.overrides);
    if (!settings && !parser.needs_settings) {
        Settings usual;
        take_paper_of_locale(usual);
        return parser.chosen(usual, console);
    }
    console.err << to_text(settings.messages);
    if (!settings) {
        return ExitStatus::Refused;
    }
    return archive::is_address(settings.value->archive) && asks_archive(parser.app)
               ? with_server(parser.chosen, *settings.value, console)
               : parser.chosen(*settings.value, console);
}

ExitStatus try_out(int argc, const char* const* argv, Console console) {
    Parser parser;
    return parse(parser, argc, argv, console).value_or(ExitStatus::Done);
}

CommandDescription program_description() {
    return describe(Parser{}.app);
}

} // namespace thawslip::app
