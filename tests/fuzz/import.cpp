// An exported folder as somebody may have changed it. A line "==== name" begins each of its files.

#include "app/archive_folder.h"
#include "fuzz/archives.h"

#include <algorithm>

using namespace thawslip;

namespace {

namespace fs = std::filesystem;

/// Whether a file of that name stays in the folder.
bool is_inside(std::string_view name) {
    return !name.empty() && name.size() < 100 && name.find("..") == std::string_view::npos &&
           name.front() != '/' && name.back() != '/' && std::ranges::all_of(name, [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '/' || c == '.' ||
                      c == '-';
           });
}

void write_file(const std::string& folder, std::string_view name, std::string_view text) {
    const fs::path path = fs::path{folder} / name;
    std::error_code error;
    fs::create_directories(path.parent_path(), error);
    if (!error) {
        fuzz::write(path.string(), text);
    }
}

void write_folder(const std::string& folder, std::string_view text) {
    constexpr std::string_view mark = "==== ";
    while (text.starts_with(mark)) {
        const auto line_end = std::min(text.find('\n'), text.size() - 1);
        const auto name = text.substr(mark.size(), line_end - mark.size());
        text.remove_prefix(line_end + 1);
        const auto next = text.find("\n==== ");
        const auto end = next == std::string_view::npos ? text.size() : next + 1;
        if (is_inside(name)) {
            write_file(folder, name, text.substr(0, end));
        }
        text.remove_prefix(end);
    }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const fuzz::Memory memory;
    const auto folder = memory.file("folder");
    memory.remove("folder");
    fs::create_directories(folder);
    write_folder(folder, fuzz::text_of(data, size));
    const auto contents = app::read_archive_folder(folder);
    if (contents) {
        fuzz::hold_merged(memory, *contents.value);
    } else {
        fuzz::hold(contents.messages.have_errors(), "a refusal says why");
    }
    return 0;
}
