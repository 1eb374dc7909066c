#include "app/command_line/help_text.h"

#include "base/list.h"
#include "base/utf8.h"

#include <algorithm>
#include <sstream>

namespace thawslip::app {
namespace {

constexpr std::size_t page_width = 80;
constexpr std::size_t widest_name = 28; ///< a longer one has its description on the next line

std::string shown_name(const ArgumentDescription& argument) {
    if (argument.long_name.empty()) {
        return argument.value;
    }
    const auto names = argument.short_name.empty()
                           ? argument.long_name
                           : argument.short_name + ", " + argument.long_name;
    return argument.value.empty() ? names : names + " " + argument.value;
}

/// Words broken into lines of at most `width` columns.
std::vector<std::string> broken(const std::string& text, std::size_t width) {
    std::vector<std::string> lines(1);
    std::istringstream words{text};
    for (std::string word; words >> word;) {
        auto& line = lines.back();
        if (line.empty()) {
            line = word;
        } else if (count_code_points(line) + 1 + count_code_points(word) <= width) {
            line += " " + word;
        } else {
            lines.push_back(word);
        }
    }
    return lines;
}

/// A name and, beside it, what it is.
struct Row {
    std::string name;
    std::string about;
};

std::string table(const std::string& heading, const std::vector<Row>& rows) {
    std::size_t name_width = 0;
    for (const auto& row : rows) {
        if (row.name.size() <= widest_name) {
            name_width = std::max(name_width, row.name.size());
        }
    }
    const std::size_t margin = 2 + name_width + 2;
    std::string text = rows.empty() ? "" : "\n" + heading + ":\n";
    for (const auto& row : rows) {
        std::string before = "  " + row.name;
        if (row.name.size() > name_width) {
            text += before + "\n";
            before.clear();
        }
        for (const auto& line : broken(row.about, page_width - margin)) {
            before.resize(margin, ' ');
            text += before;
            text += line;
            text += '\n';
            before.clear();
        }
    }
    return text;
}

std::vector<Row> rows_of(const std::vector<ArgumentDescription>& arguments) {
    return mapped(arguments, [](const ArgumentDescription& argument) {
        return Row{shown_name(argument), argument.about};
    });
}

std::string usage(const CommandDescription& command) {
    std::string line = "Usage: " + command.path;
    for (const auto& word : command.words) {
        line += word.required ? " " + word.value : " [" + word.value + "]";
    }
    for (const auto& option : command.options) {
        if (option.required) {
            line += " " + option.long_name + " " + option.value;
        }
    }
    return line + (command.commands.empty() ? " [OPTION...]\n" : " COMMAND [OPTION...]\n");
}

/// Sentences as they stand; examples set in, under a heading.
std::string paragraphs_of(const std::vector<std::string>& lines) {
    std::string text;
    bool among_examples = false;
    for (const auto& line : lines) {
        const bool is_example = !example_in(line).empty();
        if (is_example && !among_examples) {
            text += "\nExamples:\n";
        } else if (!is_example && (among_examples || text.empty())) {
            text += "\n";
        }
        text += is_example ? "  " : "";
        text += line;
        text += '\n';
        among_examples = is_example;
    }
    return text;
}

} // namespace

std::string help_text(const CommandDescription& command) {
    const auto commands = mapped(command.commands, [](const CommandDescription& below) {
        return Row{below.name, below.about};
    });
    std::string text;
    for (const auto& line : broken(command.about, page_width)) {
        text += line + "\n";
    }
    return text + "\n" + usage(command) + table("Commands", commands) +
           table("Words", rows_of(command.words)) + table("Options", rows_of(command.options)) +
           paragraphs_of(command.notes);
}

} // namespace thawslip::app
