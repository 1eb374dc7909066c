// What the program says of itself: its help, its examples, its words.

#include "app/command_line/command_line.h"
#include "app/command_line/help_text.h"
#include "app/command_line/joined_words.h"
#include "app/files/settings_file.h"
#include "base/utf8.h"
#include "kitchen/bag_id.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <iterator>
#include <regex>
#include <span>
#include <sstream>

using namespace thawslip;
using namespace thawslip::app;

namespace {

std::vector<CommandDescription> with_all_below(const CommandDescription& command) {
    std::vector<CommandDescription> all{command};
    for (const auto& below : command.commands) {
        const auto more = with_all_below(below);
        all.insert(all.end(), more.begin(), more.end());
    }
    return all;
}

std::vector<CommandDescription> every_command() {
    return with_all_below(program_description());
}

std::vector<std::string> examples_of(const CommandDescription& command) {
    std::vector<std::string> examples;
    for (const auto& note : command.notes) {
        if (const auto example = example_in(note); !example.empty()) {
            examples.push_back(example);
        }
    }
    return examples;
}

/// The words of a command line, as a shell parts them: at blanks that are not between quotes.
std::vector<std::string> words_of(const std::string& line) {
    std::vector<std::string> words;
    std::istringstream stream{line};
    for (std::string word; stream >> word;) {
        while (word.front() == '"' && (word.size() == 1 || word.back() != '"')) {
            std::string more;
            REQUIRE(bool(stream >> more));
            word += " " + more;
        }
        words.push_back(word.front() == '"' ? word.substr(1, word.size() - 2) : word);
    }
    return words;
}

struct Said {
    ExitStatus status = ExitStatus::Done;
    std::string text;
};

Said try_words(const std::vector<std::string>& words) {
    std::vector<const char*> argv;
    for (const auto& word : words) {
        argv.push_back(word.c_str());
    }
    std::ostringstream out;
    const auto status = try_out(static_cast<int>(argv.size()), argv.data(), {out, out});
    return {status, out.str()};
}

} // namespace

TEST_CASE("a word that is no command is told with the nearest one, or with its name of today") {
    struct Case {
        std::vector<std::string> words;
        std::string text;
    };
    const Case cases[] = {
        {{"thawslip", "lables"},
         "error: there is no command \"lables\"\n    hint: did you mean \"labels\"?\n"},
        {{"thawslip", "freezer", "eatn"},
         "error: there is no command \"freezer eatn\"\n    hint: did you mean \"eaten\"?\n"},
        {{"thawslip", "freezer", "thrown", "K7Q-2M4-9XC"},
         "error: there is no command \"freezer thrown\"\n"
         "    hint: thawslip freezer discarded does that\n"},
        {{"thawslip", "print"},
         "error: there is no command \"print\"\n"
         "    hint: thawslip labels DAY.toml --print does that\n"},
        {{"thawslip", "freezer", "zzzz"},
         "error: there is no command \"freezer zzzz\"\n    hint: did you mean \""}};
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto said = try_words(c.words);
        CHECK(said.status == ExitStatus::Usage);
        CHECK(said.text.starts_with(c.text));
    }
}

TEST_CASE("every command has an example, which begins with the command and parses") {
    for (const auto& command : every_command()) {
        CAPTURE(command.path);
        const auto examples = examples_of(command);
        CHECK_FALSE(examples.empty()); // a line in app/command_line_examples.cpp
        for (const auto& example : examples) {
            CAPTURE(example);
            const auto said = try_words(words_of(example));
            const bool is_hint = example.find("COMMAND") != std::string::npos;
            CHECK((is_hint || said.status == ExitStatus::Done));
            CHECK((is_hint || said.text.empty()));
            CHECK(example.starts_with(command.path));
        }
    }
}

TEST_CASE("the command line takes every word that the settings take, and no other") {
    struct Case {
        const char* option;
        std::span<const toml::Word> words;
        const char* shown; ///< of what the refusal proposes
    };
    const Case cases[] = {{"--units", service::unit_words(), "written"},
                          {"--paper", service::paper_words(), "letter"},
                          {"--storage-list", service::storage_list_words(), "did you mean"}};
    for (const auto& c : cases) {
        for (const auto& [word, also] : c.words) {
            CAPTURE(word);
            CHECK(try_words({"thawslip", "stock", "list", c.option, word}).status ==
                  ExitStatus::Done);
        }
        const auto said = try_words({"thawslip", "stock", "list", c.option, "cubits"});
        CHECK(said.status == ExitStatus::Usage);
        CHECK(said.text.find(c.shown) != std::string::npos);
    }
}

TEST_CASE("every number of the command line is taken at both ends of its range, and not beyond") {
    struct Case {
        const char* command;
        const char* argument;
        int least, most;
    };
    // A year of days, and more bags than a kitchen has (common practice, no source).
    const Case cases[] = {
        {"thawslip freezer next", "", 1, 366},         {"thawslip freezer next", "--days", 1, 366},
        {"thawslip freezer next", "--serves", 1, 999}, {"thawslip plan", "--bags", 1, 999},
        {"thawslip new", "--dishes", 1, 100},          {"thawslip desk", "--port", 0, 65535}};
    std::size_t ranges = 0;
    for (const auto& command : every_command()) {
        for (const auto* arguments : {&command.words, &command.options}) {
            for (const auto& argument : *arguments) {
                if (argument.range.empty()) {
                    continue;
                }
                CAPTURE(command.path);
                CAPTURE(argument.long_name);
                const auto c = std::ranges::find_if(cases, [&](const Case& each) {
                    return command.path == each.command && argument.long_name == each.argument;
                });
                REQUIRE(c != std::end(cases)); // a new range needs its ends here
                CHECK(argument.range == std::to_string(c->least) + " - " + std::to_string(c->most));
                const auto status = [&](int value) {
                    auto words = words_of(command.path);
                    if (command.path == "thawslip plan") {
                        words.insert(words.end(), {"day.toml", "--eat", "2026-12-03 18:30"});
                    }
                    if (command.path == "thawslip new") {
                        words.push_back("day.toml");
                    }
                    if (!argument.long_name.empty()) {
                        words.push_back(argument.long_name);
                    }
                    words.push_back(std::to_string(value));
                    return try_words(words).status;
                };
                CHECK(status(c->least) == ExitStatus::Done);
                CHECK(status(c->most) == ExitStatus::Done);
                CHECK(status(c->least - 1) == ExitStatus::Usage);
                CHECK(status(c->most + 1) == ExitStatus::Usage);
                ++ranges;
            }
        }
    }
    CHECK(ranges == std::size(cases));
}

TEST_CASE("the desk waits from a hundredth of a minute to 30 days, and takes no other text") {
    const auto status = [](const std::string& minutes) {
        return try_words({"thawslip", "desk", "--idle", minutes}).status;
    };
    for (const char* taken : {"0.01", "1", "720", "43200"}) {
        CAPTURE(taken);
        CHECK(status(taken) == ExitStatus::Done);
    }
    for (const char* refused : {"0", "0.009", "43200.1", "-1", "nan", "inf", "long", ""}) {
        CAPTURE(refused);
        CHECK(status(refused) == ExitStatus::Usage);
    }
}

TEST_CASE("dots per inch are taken from 72 to 4800, with a fraction too, and from no other text") {
    const auto status = [](const std::string& dots) {
        return try_words({"thawslip", "labels", "day.toml", "-o", "x.pdf", "--dpi", dots}).status;
    };
    for (const char* taken : {"72", "203.2", "300", "4800"}) {
        CAPTURE(taken);
        CHECK(status(taken) == ExitStatus::Done);
    }
    for (const char* refused : {"71.9", "4800.1", "0", "-300", "nan", "inf", "many", ""}) {
        CAPTURE(refused);
        CHECK(status(refused) == ExitStatus::Usage);
    }
}

TEST_CASE("help keeps to 80 columns and tells all there is") {
    for (const auto& command : every_command()) {
        CAPTURE(command.path);
        const auto text = help_text(command);
        std::istringstream lines{text};
        for (std::string line; std::getline(lines, line);) {
            CAPTURE(line);
            CHECK(count_code_points(line) <= 80);
            CHECK((line.empty() || line.back() != ' '));
        }
        for (const auto& option : command.options) {
            CAPTURE(option.long_name);
            CHECK_FALSE(option.about.empty());
            CHECK(text.find("  " + (option.short_name.empty() ? "" : option.short_name + ", ") +
                            option.long_name) != std::string::npos);
        }
        for (const auto& below : command.commands) {
            CHECK(text.find("\n  " + below.name + " ") != std::string::npos);
        }
        for (const auto& word : command.words) {
            CHECK_FALSE(word.value.empty());
            CHECK_FALSE(word.about.empty());
        }
    }
}

TEST_CASE("--help and --version go to standard output and are no failure") {
    const auto help = try_words({"thawslip", "labels", "--help"});
    CHECK(help.status == ExitStatus::Done);
    CHECK(help.text.find("Usage: thawslip labels DAY.toml... [OPTION...]\n") != std::string::npos);
    const auto program = test_support::run(THAWSLIP_PROGRAM " --version");
    CHECK(program.status == 0);
    CHECK(program.out == "thawslip " THAWSLIP_VERSION "\n");
    CHECK(program.err.empty());
    for (const auto& command : every_command()) { // wherever it stands, and whatever is missing
        CAPTURE(command.path);
        auto words_before = words_of(command.path);
        words_before.emplace_back("--version");
        CHECK(try_words(words_before).text == program.out);
    }
    const auto words = test_support::run(THAWSLIP_PROGRAM " --help");
    CHECK(words.out.find("local food authority come first") != std::string::npos);
}

TEST_CASE("a printer's name may be left out, joined, or stand behind --print") {
    using Words = std::vector<std::string>;
    struct Case {
        Words typed;
        Words taken;
    };
    const Case cases[] = {
        {{"--print"}, {"--print"}},
        {{"--print", "office"}, {"--print=office"}},
        {{"--print=office", "x"}, {"--print=office", "x"}},
        {{"--print", "-o", "x.pdf"}, {"--print", "-o", "x.pdf"}},
        {{"--print", "day.toml", "-o", "x"}, {"--print", "day.toml", "-o", "x"}},
        {{"--print", "office", "day.toml"}, {"--print=office", "day.toml"}},
        {{"--", "--print", "office"}, {"--", "--print", "office"}},
        {{}, {}},
    };
    for (const auto& c : cases) {
        CAPTURE(c.typed.size());
        CHECK(with_printers_joined(c.typed) == c.taken);
    }
}

TEST_CASE("a print that goes nowhere is a wrong command line") {
    const Said said[] = {
        try_words({"thawslip", "labels", "day.toml"}),
        try_words({"thawslip", "cards", "day.toml", "--cook-day"}),
        try_words({"thawslip", "stock", "ruler"}),
        try_words({"thawslip", "reprint", "stew"}),
    };
    for (const auto& one : said) {
        CHECK(one.status == ExitStatus::Usage);
        CHECK(one.text.find("-o FILE or --print") != std::string::npos);
    }
    CHECK(try_words({"thawslip", "labels", "day.toml", "--print"}).status == ExitStatus::Done);
    CHECK(try_words({"thawslip", "labels", "--print", "day.toml"}).status == ExitStatus::Done);
}

TEST_CASE(
    "a command line that cannot be read is explained in our own words, with what comes near") {
    struct Case {
        std::vector<std::string> words;
        std::string text;
    };
    const Case cases[] = {
        {{"thawslip", "labels"},
         "error: DAY.toml is missing\n    hint: thawslip labels --help shows what it takes\n"},
        {{"thawslip", "labels", "a.toml", "--stok", "x", "-o", "a.pdf"},
         "error: thawslip labels has no option --stok\n    hint: did you mean --stock?\n"},
        {{"thawslip", "freezer", "next", "--att", "12:30"},
         "error: thawslip freezer next has no option --att\n    hint: did you mean --at?\n"},
        {{"thawslip", "labels", "--stok", "roll"}, "error: thawslip labels has no option --stok\n"},
        {{"thawslip", "labels", "a.toml", "-o", "a.pdf", "--zzzzzz=4"},
         "error: thawslip labels has no option --zzzzzz\n"
         "    hint: thawslip labels --help shows what it takes\n"},
        {{"thawslip", "labels", "a.toml", "--stock"}, "error: --stock needs a value: NAME|FILE\n"},
        {{"thawslip", "cards", "a.toml", "--finishing", "--cook-day", "-o", "a.pdf"},
         "error: --finishing and --cook-day cannot be used together\n"},
        {{"thawslip", "freezer", "next", "900"},
         "error: N takes a number from 1 to 366, not \"900\"\n"},
        {{"thawslip", "labels", "a.toml", "--trial=maybe", "-o", "a.pdf"},
         "error: --trial takes no value\n"},
        {{"thawslip", "freezer", "list", "--all=2"}, "error: --all takes no value\n"},
        {{"thawslip", "read"}, "error: nothing to read is named\n"},
        {{"thawslip", "freezer", "eaten"}, "error: no bag is named\n    hint: name it by words"},
        {{"thawslip", "new", "a.toml", "b.toml"},
         "error: thawslip new takes no further word: \"b.toml\"\n"},
        {{"thawslip", "stock", "list", "--paper", "lettr"},
         "error: --paper: \"lettr\" is not known: did you mean \"letter\"?\n"},
        {{"thawslip", "freezer"}, "error: a command is missing\n    hint: the commands are \""},
        {{"thawslip", "labels", "a.toml", "-o", "a.pdf", "--stock", "x", "--stock", "y"},
         "error: --stock is given more than once\n"},
        {{"thawslip", "desk", "--tls"}, "error: --tls needs --kitchen ADDRESS[:PORT]\n"},
        {{"thawslip", "freezer", "next", "5", "--days", "4"},
         "error: N and --days cannot be used together\n"},
        {{"thawslip", "plan", "a.toml", "--eat", "2026-12-03 18:30", "--calendar", "-"},
         "error: --calendar: the plan goes to standard output: name a file\n"},
        {{"thawslip", "plan", "a.toml", "--eat", "2026-12-03 18:30", "--json", "-o", "-"},
         "error: --json and -o - cannot be used together\n"},
        {{"thawslip", "reprint", "--printed", "yesterday", "-o", "a.pdf"},
         "error: --printed: \"yesterday\" is no date; expected one like 2026-10-17\n"},
        {{"thawslip", "freezer", "list", "--archive", ":memory:"},
         "error: --archive: \":memory:\" is no file that an archive could be kept in\n"},
        {{"thawslip"},
         "error: a command is missing\n    hint: thawslip --help lists the commands\n"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto said = try_words(c.words);
        CHECK(said.status == ExitStatus::Usage);
        CAPTURE(said.text);
        CHECK(said.text.starts_with(c.text));
    }
}

TEST_CASE("words that the settings take are taken in capitals too") {
    CHECK(try_words({"thawslip", "stock", "list", "--paper", "A4"}).status == ExitStatus::Done);
    CHECK(try_words({"thawslip", "stock", "list", "--units", "Metric"}).status == ExitStatus::Done);
}

TEST_CASE("every bag id that the documents show has the right check letter") {
    const std::regex id{"[0-9A-Z]{3}(-[0-9A-Z]{3}){2,3}"};
    for (const auto* file : {"README.md", "layouts/README.md", "src/app/manual/thawslip.1",
                             "src/app/command_line/examples.cpp"}) {
        CAPTURE(file);
        const auto text = test_support::read_file(THAWSLIP_SOURCE_DIR "/" + std::string{file});
        for (std::sregex_iterator found{text.begin(), text.end(), id}, end; found != end; ++found) {
            CAPTURE(found->str());
            CHECK(kitchen::parse_bag_id(found->str()).ok());
        }
    }
}

TEST_CASE("the manual names the keys of the settings that the README shows, and none that is not") {
    const auto manual = test_support::read_file(THAWSLIP_SOURCE_DIR "/src/app/manual/thawslip.1");
    const auto section = manual.substr(manual.find(".Sh SETTINGS\n"));
    const auto keys = section.substr(0, section.find("\n.Sh ", 1));
    std::istringstream readme{test_support::read_file(THAWSLIP_SOURCE_DIR "/README.md")};
    std::string shown;
    for (std::string line; std::getline(readme, line) && !line.starts_with("[[printer]]");) {
        shown = line == "```toml" ? "" : shown + line + "\n";
    }
    const std::regex key{"(?:^|\n)(\\w+) *= "};
    std::size_t count = 0;
    for (std::sregex_iterator found{shown.begin(), shown.end(), key}, end; found != end; ++found) {
        CAPTURE((*found)[1].str());
        CHECK(keys.find("\n.It Cm " + (*found)[1].str() + "\n") != std::string::npos);
        ++count;
    }
    CHECK(count > 15);
    const auto of_settings = keys.substr(0, keys.find("\n.El"));
    const std::regex named{"\n.It Cm (\\w+)"};
    for (std::sregex_iterator found{of_settings.begin(), of_settings.end(), named}, end;
         found != end; ++found) {
        CAPTURE((*found)[1].str());
        const auto read = service::settings_from((*found)[1].str() + " = {}\n", "settings.toml");
        CHECK(to_text(read.messages).find("unknown key") == std::string::npos);
    }
}

TEST_CASE("every command line in the README is one that the program takes") {
    std::istringstream readme{test_support::read_file(THAWSLIP_SOURCE_DIR "/README.md")};
    int count = 0;
    bool in_code = false;
    for (std::string line; std::getline(readme, line);) {
        in_code = line.starts_with("```") ? !in_code : in_code;
        if (!in_code || !line.starts_with("thawslip ")) {
            continue;
        }
        CAPTURE(line);
        const auto said = try_words(words_of(line.substr(0, line.find(" #"))));
        CHECK(said.status == ExitStatus::Done);
        CAPTURE(said.text);
        ++count;
    }
    CHECK(count > 20);
}
