#include "app/photo_texts.h"

#include "app/time_limit.h"
#include "base/letters.h"
#include "files/input_file.h"
#include "photo/photo.h"
#include "service/read/read_bags.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>

namespace thawslip::app {
namespace {

/// Whether a file begins as pictures do: PNG (ISO/IEC 15948), JPEG (ISO/IEC 10918-1), HEIF.
bool begins_as_picture(const std::string& file) {
    std::error_code error;
    if (!std::filesystem::is_regular_file(file, error)) {
        return false;
    }
    std::ifstream in{file, std::ios::binary};
    std::array<char, 8> first{};
    in.read(first.data(), first.size());
    const std::string begin{first.data(), static_cast<std::size_t>(in.gcount())};
    return begin.starts_with("\x89PNG") || begin.starts_with("\xFF\xD8\xFF") ||
           (begin.size() == first.size() && begin.ends_with("ftyp"));
}

} // namespace

service::Outcome<std::vector<std::string>> photo_texts(const std::string& file) {
    constexpr int seconds = 20; // a hundred times what any photograph of a label takes
    const TimeLimit until{seconds};
    const auto bytes = files::read_input(file, photo::Limits{}.bytes);
    if (!bytes) {
        service::Outcome<std::vector<std::string>> texts;
        texts.messages.add_in_order({bytes.fault()}, {});
        return texts;
    }
    return service::texts_in_photo(bytes.value(), file);
}

bool names_a_photo(const std::string& word) {
    constexpr std::array<std::string_view, 6> endings = {".jpg",  ".jpeg", ".png",
                                                         ".heic", ".heif", ".avif"};
    return std::ranges::find(endings, lower(std::filesystem::path{word}.extension().string())) !=
               endings.end() ||
           begins_as_picture(word);
}

} // namespace thawslip::app
