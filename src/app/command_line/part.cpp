#include "app/command_line/parts.h"
#include "base/nearest.h"
#include "base/number_in.h"
#include "base/number_list.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace thawslip::app {
namespace {

constexpr int most_cells = 1000; ///< of any sheet

/// What is wrong with the text of --first-cell; empty where nothing is.
std::string is_first_cell(const std::string& text) {
    const auto number = number_in<int>(text);
    return text == "next" || (number && *number >= 0) // the stock says which there are
               ? ""
               : fmt::format("\"{}\" is no cell: expected a number from 1 on, or \"next\" for the "
                             "cell behind the last print",
                             text);
}

std::string are_cells(const std::string& text) {
    const auto cells = read_number_list(text, most_cells);
    return cells ? "" : cells.fault();
}

std::string are_copies(const std::string& text) {
    const auto copies = number_in<int>(text);
    return copies && *copies >= 1 && *copies <= service::most_copies
               ? ""
               : fmt::format("\"{}\" is no number of copies from 1 to {}", text,
                             service::most_copies);
}

/// An option that is given several times, as if all of it stood in one.
CLI::Option* add_words(CLI::App& command, const char* name, std::string& words, const char* about) {
    return command.add_option(name, words, about)
        ->multi_option_policy(CLI::MultiOptionPolicy::Join)
        ->delimiter(',');
}

/// An empty variable of a script, above all: it must not stand for all bags.
void require_words(const CLI::Option& option, const std::string& words) {
    if (option.count() > 0 && words.find_first_not_of(" \t\r\n,") == std::string::npos) {
        throw CLI::ValidationError{option.get_name(), "nothing is named"};
    }
}

} // namespace

void add_part(CLI::App& command, service::Part& part) {
    auto* dish = add_words(command, "--dish", part.dishes,
                           "only dishes with words that begin so, or of that whole name; a comma "
                           "between several dishes")
                     ->option_text("WORDS");
    auto* bag = add_words(command, "--bag", part.bags,
                          "only these bags: ids, or numbers in the order of printing; with --dish, "
                          "of the dish")
                    ->option_text("N-M|ID");
    auto* from = command
                     .add_option("--from", part.from,
                                 "from this bag on, by its id or number, as after a jam")
                     ->option_text("ID|N");
    command.parse_complete_callback([=, &part] {
        require_words(*dish, part.dishes);
        require_words(*bag, part.bags);
        require_words(*from, part.from);
    });
    command.add_flag("--only-new", part.only_new,
                     "only bags that no print of this kind has yet; of lists, that have no label");
}

void add_copies(CLI::App& command, const std::function<void(int)>& take) {
    command
        .add_option_function<std::string>(
            "--copies", [take](const std::string& text) { take(*number_in<int>(text)); },
            "how many of each, one behind the other (1)")
        ->check(are_copies)
        ->option_text("N");
}

void add_cells(CLI::App& command, const std::function<void(int)>& take_first,
               std::vector<int>& skip) {
    command
        .add_option_function<std::string>(
            "--first-cell",
            [take_first](const std::string& text) {
                take_first(text == "next" ? service::next_cell : *number_in<int>(text));
            },
            "start at this cell of a half-used sheet, counted along rows from 1; next: behind the "
            "last print on that stock")
        ->check(is_first_cell)
        ->option_text("N|next");
    command
        .add_option_function<std::string>(
            "--skip",
            [&skip](const std::string& text) {
                skip = read_number_list(text, most_cells).value_or({});
            },
            "cells of the first sheet that cannot be used: 3-5,9")
        ->check(are_cells)
        ->multi_option_policy(CLI::MultiOptionPolicy::Join)
        ->delimiter(',')
        ->option_text("N-M");
}

} // namespace thawslip::app
