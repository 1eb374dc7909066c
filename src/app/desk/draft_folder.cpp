#include "app/desk/draft_folder.h"

#include "app/desk/private_folder.h"
#include "app/files/whole_file.h"
#include "base/system_failure.h"
#include "base/text_file.h"
#include "kitchen/bag_id.h"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fmt/format.h>
#include <unistd.h>

namespace thawslip::app {
namespace {

/// Where a day's draft is, and its first line: the day's whole path, for two may have one hash. (A
/// path may hold a line's end; it is left out there, and the length stands for it.)
struct DraftPlace {
    std::string file;
    std::string head;
};

DraftPlace place_of(const std::string& drafts, const std::string& days, const std::string& name) {
    const auto day = (std::filesystem::path{days} / name).string();
    auto line = day;
    std::erase(line, '\n');
    return {fmt::format("{}/{:016x}.toml", drafts, kitchen::fnv_1a(day)),
            fmt::format("# {} {}\n", day.size(), line)};
}

std::optional<std::string> read_draft(const DraftPlace& place) {
    constexpr std::size_t most = std::size_t{2} << 20U;
    auto text = read_text_file(place.file, most);
    if (!text || !text.value().starts_with(place.head)) {
        return std::nullopt;
    }
    return text.value().substr(place.head.size());
}

void write_draft(const std::string& drafts, const DraftPlace& place, const std::string& text) {
    if (!text.empty()) {
        make_private_folder(drafts);
        write_whole_file(place.file, place.head + text, Readers::OwnerAlone);
    } else if (::unlink(place.file.c_str()) != 0 && errno != ENOENT) {
        throw SystemFailure{fmt::format("cannot remove {}: {}", place.file, std::strerror(errno))};
    }
}

} // namespace

desk::Drafts draft_folder(const std::string& drafts, const std::string& days) {
    return {
        [=](const std::string& name) { return read_draft(place_of(drafts, days, name)); },
        [=](const std::string& name, const std::string& text) {
            write_draft(drafts, place_of(drafts, days, name), text);
        },
    };
}

} // namespace thawslip::app
