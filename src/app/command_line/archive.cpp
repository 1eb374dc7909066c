#include "app/archive_commands.h"
#include "app/command_line/parts.h"
#include "kitchen/date.h"
#include "kitchen/timeline/local_clock.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>

namespace thawslip::app {
namespace {

std::string is_date(const std::string& text) {
    return kitchen::parse_iso(text)
               ? ""
               : fmt::format("\"{}\" is no date; expected one like 2026-10-17", text);
}

/// Labels where nothing else is said, cards of both kinds or of one.
void add_kinds(CLI::App& command, service::ReprintKind& kind) {
    using service::ReprintKind;
    const auto add = [&](const char* name, ReprintKind meant, const char* about) {
        return command.add_flag_callback(
            name,
            [&kind, meant] {
                if (kind == ReprintKind::Labels || meant != ReprintKind::Cards) {
                    kind = meant; // --card beside one kind of cards says no more than that
                }
            },
            about);
    };
    add("--card", ReprintKind::Cards, "cards instead of labels");
    auto* finishing = add("--finishing", ReprintKind::FinishingCards, "finishing cards only");
    add("--cook-day", ReprintKind::CookDayCards, "cook-day cards only")->excludes(finishing);
}

void add_reprint(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("reprint", "print labels or cards again from the archive");
    auto options = std::make_shared<ReprintOptions>();
    auto* bags = command
                     ->add_option("bags", options->question.bags,
                                  "ids of bags, or words of a dish; a comma between several")
                     ->option_text("WORDS|BAG...");
    auto* printed = command
                        ->add_option("--printed", options->question.printed,
                                     "everything that was printed on that day")
                        ->excludes(bags)
                        ->check(is_date)
                        ->option_text("DATE");
    add_destination(*command, options->output, options->printer);
    add_overwrite(*command, options->overwrite);
    command->add_option("--stock", options->look.stock, "another stock than it was printed on")
        ->option_text("NAME|FILE");
    add_part(*command, options->question.part);
    add_copies(*command, [look = &options->look](int copies) { look->copies = copies; });
    add_cells(
        *command, [look = &options->look](int cell) { look->first_cell = cell; },
        options->look.skip);
    add_kinds(*command, options->question.kind);
    command->callback([=, &chosen] {
        if (bags->count() == 0 && printed->count() == 0 && is_whole(options->question.part)) {
            throw CLI::RequiredError{"a bag's id, words of a dish, --dish, --bag, --from, "
                                     "--only-new or --printed"};
        }
        require_destination(options->output, options->printer);
        chosen = [options](const Settings& settings, Console console) {
            return reprint(*options, settings, console);
        };
    });
}

void add_without(CLI::App& command, std::optional<std::string>& without, const char* about) {
    command.add_option("--without", without, about)->option_text("WORDS");
}

void add_listing(CLI::App& freezer, Command& chosen, const char* name, const char* about) {
    auto* command = freezer.add_subcommand(name, about);
    auto options = std::make_shared<FreezerListOptions>();
    auto* question = &options->question;
    if (std::string_view{name} == "find") {
        command
            ->add_option("words", question->words,
                         "words of the dish or the place, or their beginnings")
            ->required()
            ->option_text("WORDS...");
    }
    command->add_flag("--all", question->gone_too, "bags that are out, eaten or discarded as well");
    add_without(*command, options->without,
                "what a guest may not eat: which bags name it, which do not: \"milk, walnut\"");
    auto answer = add_json(*command);
    command->callback([=, &chosen] {
        chosen = [options, answer](const Settings& settings, Console console) {
            return freezer_list(*options, *answer, settings, console);
        };
    });
}

/// Which bags are meant: ids, or words of which several may fit.
struct BagChoice {
    std::vector<std::string> typed;
    WhichOfSeveral which = WhichOfSeveral::Ask;
};

std::shared_ptr<BagChoice> add_bags(CLI::App& command) {
    auto choice = std::make_shared<BagChoice>();
    command
        .add_option("bags", choice->typed,
                    "words of a dish, or ids of bags; a comma between several")
        ->required()
        ->option_text("WORDS|BAG...");
    auto* oldest = command.add_flag_callback(
        "--oldest", [choice] { choice->which = WhichOfSeveral::Oldest; },
        "of several bags that the words fit, the oldest");
    command
        .add_flag_callback(
            "--all", [choice] { choice->which = WhichOfSeveral::All; },
            "every bag that the words fit")
        ->excludes(oldest);
    return choice;
}

void add_state(CLI::App& freezer, Command& chosen, const char* name, archive::State state,
               const char* about) {
    auto* command = freezer.add_subcommand(name, about);
    auto bags = add_bags(*command);
    command->callback([=, &chosen] {
        chosen = [bags, state](const Settings& settings, Console console) {
            return freezer_set(bags->typed, bags->which, state, settings, console);
        };
    });
}

void add_move(CLI::App& freezer, Command& chosen) {
    auto* command = freezer.add_subcommand("move", "bags lie elsewhere by now");
    auto bags = add_bags(*command);
    auto place = std::make_shared<std::string>();
    command->add_option("--to", *place, "where, in your own words: \"garage, basket 2\"")
        ->required()
        ->option_text("PLACE");
    command->callback([=, &chosen] {
        chosen = [bags, place](const Settings& settings, Console console) {
            return freezer_move(bags->typed, bags->which, *place, settings, console);
        };
    });
}

void add_renamed(CLI::App& freezer, Command& chosen) {
    auto* command = freezer.add_subcommand(
        "renamed", "a dish was printed under another name: both names are the same bags");
    auto names = std::make_shared<std::pair<std::string, std::string>>();
    command->add_option("old", names->first, "words of the old name, or a bag's id")
        ->required()
        ->option_text("OLD");
    command->add_option("new", names->second, "words of the new name, or a bag's id")
        ->required()
        ->option_text("NEW");
    command->callback([=, &chosen] {
        chosen = [names](const Settings& settings, Console console) {
            return freezer_renamed(names->first, names->second, settings, console);
        };
    });
}

void add_history(CLI::App& freezer, Command& chosen) {
    auto* command = freezer.add_subcommand("history", "what happened to a bag");
    auto typed = std::make_shared<std::vector<std::string>>();
    command->add_option("bags", *typed, "words of a dish, or ids of bags; a comma between several")
        ->required()
        ->option_text("WORDS|BAG...");
    auto answer = add_json(*command);
    command->callback([=, &chosen] {
        chosen = [=](const Settings& settings, Console console) {
            return freezer_history(*typed, *answer, settings, console);
        };
    });
}

std::chrono::minutes time_of_day(const std::string& text) {
    const auto time = kitchen::parse_time_of_day(text);
    if (!time) {
        throw CLI::ValidationError{"--at", "\"" + text + "\" is no time of day such as 18:30"};
    }
    return *time;
}

void add_freezer(CLI::App& app, Command& chosen) {
    auto* freezer = app.add_subcommand("freezer", "what is in the freezer, and what to eat next");
    freezer->require_subcommand(1);
    add_listing(*freezer, chosen, "list", "every bag, earliest date first");
    add_listing(*freezer, chosen, "find", "bags by words of the dish");
    add_state(*freezer, chosen, "out", archive::State::Out, "bags were taken out to thaw");
    add_state(*freezer, chosen, "back", archive::State::Frozen, "bags are in the freezer again");
    add_state(*freezer, chosen, "eaten", archive::State::Eaten, "bags were eaten");
    add_state(*freezer, chosen, "discarded", archive::State::Discarded, "bags were thrown away");
    add_state(*freezer, chosen, "never-filled", archive::State::NeverFilled,
              "labels were printed, but there are no such bags");
    add_move(*freezer, chosen);
    add_renamed(*freezer, chosen);
    freezer->add_subcommand("undo", "take the last change back")->callback([&chosen] {
        chosen = freezer_undo;
    });
    add_history(*freezer, chosen);
    auto* next = freezer->add_subcommand("next", "what to eat on the coming days");
    auto options = std::make_shared<FreezerNextOptions>();
    auto* question = &options->question;
    auto at = std::make_shared<std::string>("18:30");
    auto* count = next->add_option("count", question->count, "how many days, from tomorrow on (5)")
                      ->check(CLI::Range(1, 366))
                      ->option_text("N");
    next->add_option("--days", question->count, "the same")
        ->check(CLI::Range(1, 366))
        ->excludes(count)
        ->option_text("N");
    next->add_option("--serves", question->serves,
                     "how many eat: bags of one dish together serve as many (2, or 1 where most "
                     "bags are for one)")
        ->check(CLI::Range(1, 999))
        ->option_text("N");
    next->add_flag("--past", question->past_too,
                   "bags past a best-by date too; never those past a use-by date");
    add_without(*next, options->without,
                "what a guest may not eat: proposes no dish that names it");
    next->add_option("--at", *at, "when to eat (18:30)")->option_text("HH:MM");
    auto answer = add_json(*next);
    next->callback([=, &chosen] {
        options->question.at = time_of_day(*at);
        chosen = [options, answer](const Settings& settings, Console console) {
            return freezer_next(*options, *answer, settings, console);
        };
    });
}

template <class Run>
void add_with_file(CLI::App& archive, Command& chosen, const char* name, const char* about, Run run,
                   const char* value = "FILE") {
    auto* command = archive.add_subcommand(name, about);
    auto file = std::make_shared<std::string>();
    command->add_option("place", *file, "where it is, or is to be")->required()->option_text(value);
    command->callback([file, run, &chosen] {
        chosen = [file, run](const Settings& settings, Console console) {
            return run(*file, settings, console);
        };
    });
}

template <class Run>
void add_with_kitchens(CLI::App& archive, Command& chosen, const char* name, const char* about,
                       Run run, const char* value) {
    auto* command = archive.add_subcommand(name, about);
    auto place = std::make_shared<std::string>();
    auto kitchens = std::make_shared<archive::Kitchens>(archive::Kitchens::MayDiffer);
    command->add_option("place", *place, "where it is")->required()->option_text(value);
    command->add_flag_callback(
        "--same-kitchen", [kitchens] { *kitchens = archive::Kitchens::AreOne; },
        "both are of one kitchen: a bag of the same id and food is the same bag");
    command->callback([=, &chosen] {
        chosen = [=](const Settings& settings, Console console) {
            return run(*place, *kitchens, settings, console);
        };
    });
}

void add_archive(CLI::App& app, Command& chosen) {
    auto* archive = app.add_subcommand("archive", "the archive of all prints: check, save, merge");
    archive->require_subcommand(1);
    archive->add_subcommand("check", "whether its file is sound")->callback([&chosen] {
        chosen = archive_check;
    });
    add_with_file(*archive, chosen, "backup", "copy it to a new file", archive_backup);
    add_with_file(*archive, chosen, "restore",
                  "put a backup into its place; the one of before is kept", archive_restore);
    archive->add_subcommand("repair", "rebuild what can be rebuilt of it, and name what cannot")
        ->callback([&chosen] { chosen = archive_repair; });
    add_with_kitchens(*archive, chosen, "merge", "add what another archive holds", archive_merge,
                      "FILE");
    archive
        ->add_subcommand("send", "bring this station's copy and the archive on a server together")
        ->callback([&chosen] { chosen = archive_send; });
    archive
        ->add_subcommand("sql", "what a PostgreSQL server is made ready with, for several kitchens")
        ->callback([&chosen] { chosen = archive_sql; });
    add_with_file(*archive, chosen, "export", "write it as a folder of plain TOML", archive_export,
                  "FOLDER");
    add_with_kitchens(*archive, chosen, "import", "add what such a folder holds", archive_import,
                      "FOLDER");
}

} // namespace

void add_archive_commands(CLI::App& app, Command& chosen) {
    add_reprint(app, chosen);
    add_freezer(app, chosen);
    add_archive(app, chosen);
}

} // namespace thawslip::app
