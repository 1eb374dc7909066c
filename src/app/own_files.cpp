#include "app/own_files.h"

#include "app/input_file.h"

#include <algorithm>

namespace thawslip::app {

bool is_file_name(const std::string& name_or_file) {
    return name_or_file.find('/') != std::string::npos || name_or_file.ends_with(".toml");
}

Result<std::string, std::string> OwnFiles::text_of(const std::string& file) {
    const auto known = std::ranges::find(files_, file, &archive::SetupFile::name);
    if (known != files_.end()) {
        return known->text;
    }
    constexpr std::size_t largest = std::size_t{1} << 18U;
    auto text = read_input(file, largest);
    if (!text) {
        return Failure{to_text(text.fault())};
    }
    files_.push_back({file, text.value()});
    return std::move(text).value();
}

} // namespace thawslip::app
