#include "app/clock.h"
#include "app/commands.h"
#include "app/files/output_guard.h"
#include "app/files/whole_file.h"
#include "app/new_day/interview.h"
#include "app/question.h"
#include "app/shell_word.h"
#include "base/utf8.h"

#include <filesystem>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

/// The dishes that the command line names; the others, up to the count that it gives, without a
/// name.
std::vector<service::NewDish> dishes_named(const NewOptions& options) {
    std::vector<service::NewDish> dishes;
    for (const auto& name : options.dishes) {
        dishes.emplace_back().name = name;
    }
    dishes.resize(std::max(dishes.size(), static_cast<std::size_t>(options.count)));
    return dishes;
}

bool are_utf8(const service::NewDay& day) {
    auto words = day.kitchen;
    for (const auto& dish : day.dishes) {
        words += dish.name + "\n" + dish.food + "\n" + dish.weight + "\n" + dish.thickness + "\n";
    }
    return !first_invalid_utf8(words);
}

std::string what_next(const service::NewDay& day, const std::string& file) {
    return fmt::format("{}: a day to {}, then: thawslip check {}\n", file,
                       day.dishes.empty() ? "start from. Change it" : "fill in. Do that",
                       shell_word(file));
}

} // namespace

ExitStatus new_day(const NewOptions& options, const Settings& settings, std::istream& answers,
                   Console console) {
    const auto& file = options.file;
    if (const auto refused = refuse_output({file, {".toml"}}, settings, console)) {
        return *refused;
    }
    std::error_code error;
    if (file != "-" && std::filesystem::exists(std::filesystem::symlink_status(file, error))) {
        console.err << fmt::format("error: {} already exists; nothing written\n"
                                   "    hint: name another file\n",
                                   file);
        return ExitStatus::Refused;
    }
    service::NewDay day{today(), options.kitchen, dishes_named(options)};
    if (options.ask) {
        day.dishes = ask_dishes(ask_on(answers, console.err), options.count, language_of(settings));
    }
    if (!are_utf8(day)) {
        console.err << "error: the words are not UTF-8; nothing written\n";
        return ExitStatus::Refused;
    }
    write_whole_file(file,
                     service::new_day_text(day, settings.language, settings.kitchen.allergens->name,
                                           service::freezable_kinds(settings.storage_list)));
    if (file != "-") {
        console.out << what_next(day, file);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
