#pragma once

#include "base/key_path.h"

#include <cstdint>
#include <string>
#include <vector>

namespace thawslip {

enum class Severity { Error, Caution, Note };

/// "error", "caution", "note": as messages begin, and as other programs are told.
std::string_view severity_word(Severity severity);

/// A place in one source file. Lines and columns count from 1; columns count Unicode code
/// points. `line == 0` means that no place inside the file is known.
struct SourceSpan {
    std::string file;
    std::uint32_t line = 0;
    std::uint32_t column = 0;
    std::uint32_t length = 0; ///< code points on that line; 0 when unknown
    friend bool operator==(const SourceSpan&, const SourceSpan&) = default;
};

/// One thing that is wrong with what was written, and what to do about it.
struct Diagnostic {
    Severity severity = Severity::Error;
    SourceSpan where;
    KeyPath key;
    std::string message;            ///< lower case, no full stop: `"fridge" is not a thaw method`
    std::vector<std::string> hints; ///< what to write instead: `did you mean "refrigerator"?`
    friend bool operator==(const Diagnostic&, const Diagnostic&) = default;
};

using Diagnostics = std::vector<Diagnostic>;

bool has_errors(const Diagnostics& diagnostics);

/// By file, then line, then column; what was said first about one place stays first.
void sort_by_place(Diagnostics& diagnostics);

/// `file:line:column: error: message` and, below, the line of `source` with a mark under the
/// place (left out when `source` is empty or the place unknown) and one line per hint.
/// Control characters of `source` are shown as spaces, so that a file cannot drive a terminal.
std::string to_text(const Diagnostic& diagnostic, std::string_view source = {});

} // namespace thawslip
