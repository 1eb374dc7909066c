#include "app/files/kept_files.h"

#include "base/text_file.h"
#include "service/print/own_files.h"

#include <filesystem>
#include <optional>

namespace thawslip::app {
namespace {

std::optional<std::string> text_on_disk(const std::string& file) {
    constexpr std::size_t largest = std::size_t{1} << 26U;
    auto text = read_text_file(file, largest);
    return text ? std::optional{std::move(text).value()} : std::nullopt;
}

} // namespace

std::string lasting_name(const std::string& name_or_file) {
    return service::is_file_name(name_or_file)
               ? std::filesystem::absolute(name_or_file).lexically_normal().string()
               : name_or_file;
}

archive::PrintSetup with_lasting_names(archive::PrintSetup setup) {
    setup.stock = lasting_name(setup.stock);
    setup.layout = lasting_name(setup.layout);
    for (auto& file : setup.files) {
        file.name = lasting_name(file.name);
    }
    return setup;
}

std::vector<std::string> changed_files(const std::vector<archive::SetupFile>& files) {
    std::vector<std::string> changed;
    for (const auto& file : files) {
        const auto now = text_on_disk(file.name);
        if (now != file.text) {
            changed.push_back(file.name + (now ? " has changed" : " is gone"));
        }
    }
    return changed;
}

} // namespace thawslip::app
