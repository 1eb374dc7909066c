#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace thawslip::desk {

/// The text of a file for a page, whose fields of text end lines by a line feed alone: without a
/// byte-order mark and carriage returns before line feeds.
std::string page_text(std::string_view file_text);

/// A page's text as its file had it before: with the mark and the carriage returns that it had.
std::string file_text(std::string_view page_text, std::string_view before);

/// A name for what a file holds, in quotes (RFC 9110, 8.8.3); "none" for a file that is not there.
std::string etag_of(const std::optional<std::string>& file_text);

} // namespace thawslip::desk
