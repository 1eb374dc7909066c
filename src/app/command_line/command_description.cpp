#include "app/command_line/command_description.h"

#include "base/split.h"

#include <CLI/CLI.hpp>
#include <sstream>

namespace thawslip::app {
namespace {

std::string path_of(const CLI::App& app) {
    const auto* parent = app.get_parent();
    return parent == nullptr ? app.get_name() : path_of(*parent) + " " + app.get_name();
}

/// The library says it at the end of the type: "INT:INT in [1 - 366]".
std::string range_of(const CLI::Option& option) {
    const auto type = option.get_type_name();
    const auto open = type.find(" in [");
    return open == std::string::npos ? "" : type.substr(open + 5, type.rfind(']') - open - 5);
}

ArgumentDescription argument(const CLI::Option& option) {
    ArgumentDescription described{{},
                                  {},
                                  option.get_option_text(),
                                  option.get_description(),
                                  option.get_required(),
                                  range_of(option)};
    if (!option.get_snames().empty()) {
        described.short_name = "-" + option.get_snames().front();
    }
    if (!option.get_lnames().empty()) {
        described.long_name = "--" + option.get_lnames().front();
    }
    return described;
}

} // namespace

CommandDescription describe(const CLI::App& app) {
    CommandDescription described{path_of(app),
                                 app.get_name(),
                                 app.get_description(),
                                 {},
                                 {},
                                 {},
                                 lines_in(app.get_footer())};
    for (const auto* option : app.get_options()) {
        (option->nonpositional() ? described.options : described.words)
            .push_back(argument(*option));
    }
    for (const auto* command : app.get_subcommands({})) {
        described.commands.push_back(describe(*command));
    }
    return described;
}

std::string example_in(const std::string& note) {
    if (!note.starts_with("thawslip ")) {
        return {};
    }
    const auto remark = note.find("  #");
    const auto end = note.find_last_not_of(' ', remark == std::string::npos ? remark : remark - 1);
    return note.substr(0, end + 1);
}

} // namespace thawslip::app
