#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace thawslip {

/// The text without the blanks, tabs and line ends around it.
std::string_view trimmed(std::string_view text);

/// What stands between any of the characters of `marks`, in order; nothing that is empty.
std::vector<std::string> split(std::string_view text, std::string_view marks);

/// What stands between commas, without the blanks around it; nothing that is empty.
std::vector<std::string> parts_between_commas(std::string_view text);

/// The words by which a text is searched: runs of letters and digits (`is_of_word`).
std::vector<std::string> searchable_words(std::string_view text);

/// The first line of a text, without its end; the text goes on behind it. An empty one stays so.
std::string_view take_line(std::string_view& text);

/// The lines of a text without their ends, empty ones too; behind the last end there is none.
std::vector<std::string> lines_in(std::string_view text);

} // namespace thawslip
