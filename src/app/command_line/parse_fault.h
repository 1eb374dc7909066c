#pragma once

#include <string>

namespace CLI {
class App;
class ParseError;
} // namespace CLI

namespace thawslip::app {

/// What is wrong with a command line, in our own words: `error: …` and a hint that names what comes
/// nearest, or where the help is. The parser's own words are never shown.
/// \param program the parser with every command, as far as it has read
std::string parse_fault_text(const CLI::App& program, const CLI::ParseError& error);

} // namespace thawslip::app
