#pragma once

#include "base/result.h"
#include "layout/tracks.h"
#include "toml/file_table.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::layout {

/// Reads a track as a layout file writes it: "content", "share", "share 1.5", "30 %", "12 mm".
/// \returns the track, or what is wrong with the text
Result<Track, std::string> parse_track(std::string_view text);

/// A list of tracks; empty where the key is absent. What is wrong is reported where it stands.
std::vector<Track> read_tracks(toml::Table& table, const toml::Key& key);

} // namespace thawslip::layout
