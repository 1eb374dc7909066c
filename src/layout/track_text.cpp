#include "layout/track_text.h"

#include "base/length_text.h"

#include <charconv>
#include <fmt/format.h>
#include <optional>

namespace thawslip::layout {
namespace {

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

/// A plain decimal number that is the whole text; never by the user's locale.
std::optional<double> number(std::string_view text) {
    double value = 0.0;
    const auto [end, error] =
        std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    if (error != std::errc{} || end != text.data() + text.size()) {
        return std::nullopt;
    }
    return value;
}

Result<Track, std::string> checked(Track track, double most, std::string_view text) {
    if (track.amount > 0.0 && track.amount <= most) {
        return track;
    }
    return Failure{fmt::format("\"{}\" is out of range: above 0, at most {}", text, most)};
}

} // namespace

Result<Track, std::string> parse_track(std::string_view text) {
    const auto word = trimmed(text);
    if (word == "content") {
        return Track{Track::Kind::Content, {}, 1.0};
    }
    if (word.starts_with("share")) {
        const auto shares = trimmed(word.substr(5));
        const auto amount = shares.empty() ? std::optional{1.0} : number(shares);
        if (amount) {
            return checked({Track::Kind::Share, {}, *amount}, 1000.0, text);
        }
    } else if (word.ends_with("%")) {
        if (const auto amount = number(trimmed(word.substr(0, word.size() - 1)))) {
            return checked({Track::Kind::Percent, {}, *amount}, 100.0, text);
        }
    } else if (const auto length = parse_length(word)) {
        if (length.value() > Length{} && length.value() <= Length::millimetres(2000)) {
            return Track{Track::Kind::Fixed, length.value(), 1.0};
        }
    }
    return Failure{fmt::format("\"{}\" is not the size of a column or row", text)};
}

std::vector<Track> read_tracks(toml::Table& table, const toml::Key& key) {
    const auto texts = table.strings(key, 64);
    std::vector<Track> tracks;
    for (const auto& text : texts) {
        auto track = parse_track(text.value);
        if (track) {
            tracks.push_back(track.value());
        } else {
            table.reader().error(text.key, track.fault(),
                                 {R"(write "content", "share", "share 2", "30 %" or "12 mm")"});
            tracks.emplace_back();
        }
    }
    return tracks;
}

} // namespace thawslip::layout
