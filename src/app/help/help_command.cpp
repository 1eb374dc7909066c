#include "app/commands.h"
#include "app/help/tasks.h"
#include "base/split.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

void show(const Task& task, std::ostream& out) {
    out << fmt::format("When {}:\n", task.when);
    for (const auto& line : lines_in(task.commands)) {
        out << "    " << line << "\n";
    }
    if (!task.mind.empty()) {
        out << fmt::format("    {}\n", task.mind);
    }
}

void show_all(std::ostream& out) {
    out << "thawslip help WORDS shows what is typed when …\n";
    for (const auto& task : all_tasks()) {
        out << fmt::format("    {}\n", task.when);
    }
    out << "thawslip --help lists the commands, thawslip COMMAND --help what each takes.\n";
}

} // namespace

ExitStatus help(const std::string& words, Console console) {
    if (words.empty()) {
        show_all(console.out);
        return ExitStatus::Done;
    }
    const auto found = tasks_about(words);
    if (found.empty()) {
        console.err << fmt::format("error: no answer has the words \"{}\"\n"
                                   "    hint: thawslip help lists what it answers\n",
                                   words);
        return ExitStatus::Refused;
    }
    for (const auto& task : found) {
        show(task, console.out);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app
