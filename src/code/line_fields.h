#pragma once

#include "code/lines.h"
#include "code/message.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// What lines are made of in every version of the grammar: fields between marks, and the lines
// that no version has changed. Released grammars stand on it: what is here never changes.
namespace thawslip::code {

/// Appends `word` and `text` as one more field of a line; nothing for an empty text.
void add_field(std::string& line, std::string_view word, std::string_view text);

/// Appends a newline, `word` and `line`; nothing for an empty line.
void add_line(std::string& text, std::string_view word, const std::string& line);

std::string with_marks(const std::vector<std::string>& words); ///< with marks between

/// `SERVES 6 * BAG K7Q-2M4-9XW * MADE 17 OCT 2026 * BEST BY 17 JAN 2027`.
std::string facts_line(const Message& message);

/// `IN SLOW COOKER * AT LOW * FOR 7-9 H * TO 74 C`; `after_time` stands after the time.
std::string cook_line(const Cooking& cooking, std::string_view after_time = "");

/// A line for each of `additions`.
void add_additions(std::string& text, const std::vector<Addition>& additions);

// The inverses. What is not understood is passed over: who reads a whole text compares it with
// what is written of it afterwards.

std::vector<std::string_view> split(std::string_view text, std::string_view at);

/// Takes `word` off the front of `text`; whether it stood there.
bool take(std::string_view& text, std::string_view word);

std::vector<std::string> words_of(std::string_view line); ///< of `joined`
void read_facts(std::string_view line, Message& message);
void read_cooking(std::string_view line, Cooking& cooking, std::string_view after_time = "");

/// \returns whether `line` is an addition
bool read_addition(std::string_view line, Message& message);

/// Reads a text whose first line is the dish and whose last says how far it goes; `read_line` takes
/// each between.
Message read_by_lines(std::string_view text, void (*read_line)(std::string_view, Message&));

/// Whether the last of `lines` sends the reader to the card.
Extent read_extent(std::string_view last_line);

} // namespace thawslip::code
