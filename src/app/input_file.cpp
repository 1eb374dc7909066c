#include "app/input_file.h"

#include "app/exit_status.h"
#include "toml/text_file.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

bool is_same_file(const std::string& one, const std::string& other) {
    std::error_code error;
    return fs::equivalent(one, other, error) && !error;
}

bool is_systems(const toml::FileFault& fault) {
    return fault.kind == toml::FileFault::Kind::NotPermitted ||
           fault.kind == toml::FileFault::Kind::Unreadable;
}

} // namespace

Result<std::string, Diagnostic> read_input(const std::string& path, std::size_t limit) {
    auto text = toml::read_text_file(path, limit);
    if (text) {
        return std::move(text).value();
    }
    auto fault = toml::to_diagnostic(text.fault());
    if (is_systems(text.fault())) {
        throw SystemFailure{fmt::format("{}: {}", fault.where.file, fault.message)};
    }
    return Failure{std::move(fault)};
}

bool would_overwrite(const std::string& output, std::vector<std::string> inputs,
                     const Settings& settings, Console console) {
    inputs.insert(inputs.end(), {settings.file, settings.archive});
    const bool found = std::ranges::any_of(
        inputs, [&output](const std::string& input) { return is_same_file(output, input); });
    if (found) {
        console.err << fmt::format("error: {} is a file that this is made from or recorded in; "
                                   "nothing written\n"
                                   "    hint: name another file\n",
                                   output);
    }
    return found;
}

} // namespace thawslip::app
