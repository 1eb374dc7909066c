#include "app/commands.h"
#include "app/help/tasks.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

void show(const Task& task, std::ostream& out) {
    out << fmt::format("When {}:\n", task.when);
    for (std::size_t at = 0; at < task.commands.size();) {
        const auto end = std::min(task.commands.find('\n', at), task.commands.size());
        out << "    " << task.commands.substr(at, end - at) << "\n";
        at = end + 1;
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
