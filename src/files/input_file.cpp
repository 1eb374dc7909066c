#include "files/input_file.h"

#include "base/system_failure.h"
#include "base/text_file.h"

#include <fmt/format.h>

namespace thawslip::files {
namespace {

bool is_systems(const FileFault& fault) {
    return fault.kind == FileFault::Kind::NotPermitted || fault.kind == FileFault::Kind::Unreadable;
}

} // namespace

Result<std::string, Diagnostic> read_input(const std::string& path, std::size_t limit) {
    auto text = read_text_file(path, limit);
    if (text) {
        return std::move(text).value();
    }
    auto fault = to_diagnostic(text.fault());
    if (is_systems(text.fault())) {
        throw SystemFailure{fmt::format("{}: {}", fault.where.file, fault.message)};
    }
    return Failure{std::move(fault)};
}

} // namespace thawslip::files
