#include "app/files/text_if_there.h"

#include "base/system_failure.h"
#include "base/text_file.h"

#include <utility>

namespace thawslip::app {

std::optional<std::string> text_if_there(const std::string& file, std::size_t most) {
    auto text = read_text_file(file, most);
    if (text) {
        return std::move(text).value();
    }
    if (text.fault().kind == FileFault::Kind::Missing) {
        return std::nullopt;
    }
    throw SystemFailure{to_diagnostic(text.fault()).message};
}

} // namespace thawslip::app
