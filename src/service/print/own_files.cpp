#include "service/print/own_files.h"

#include <algorithm>

namespace thawslip::service {

bool is_file_name(const std::string& name_or_file) {
    return name_or_file.find('/') != std::string::npos || name_or_file.ends_with(".toml");
}

std::string name_in(const std::string& file) {
    const auto name = file.substr(file.rfind('/') + 1); // npos + 1 is 0
    const auto dot = name.rfind('.');
    return dot == 0 ? name : name.substr(0, dot);
}

const std::string* OwnFiles::known(const std::string& file) const {
    const auto found = std::ranges::find(files_, file, &archive::SetupFile::name);
    return found != files_.end() ? &found->text : nullptr;
}

Result<std::string, Diagnostic> OwnFiles::text_of(const std::string& file,
                                                  const Surroundings& around) {
    if (const auto* text = known(file)) {
        return *text;
    }
    auto text = around.own_file(file);
    if (text) {
        files_.push_back({file, text.value()});
    }
    return text;
}

} // namespace thawslip::service
