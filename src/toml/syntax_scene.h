#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What the makers of syntax messages share; nothing outside `syntax_*.cpp` needs it.
namespace thawslip::toml::syntax {

/// What to say about a stretch of the text.
struct Explanation {
    std::size_t begin = 0;
    std::size_t end = 0;
    std::string message;
    std::vector<std::string> hints = {};
};

/// The text, and what the parser said about it where.
struct Scene {
    std::string_view text;
    std::size_t noticed = 0; ///< byte offset
    std::string_view description;

    bool says(std::string_view words) const {
        return description.find(words) != std::string_view::npos;
    }
    std::size_t line_start() const {
        return text.substr(0, noticed).rfind('\n') + 1; // npos + 1 is 0
    }
    std::size_t line_end() const {
        return std::min(text.find_first_of("\r\n", noticed), text.size());
    }
    char at(std::size_t offset) const { return offset < text.size() ? text[offset] : '\n'; }
};

/// A maker looks whether the mistake is of its kind and explains it if so.
using Found = std::optional<Explanation>;

// Mistakes inside a text: syntax_text_fault.cpp.
Found escape_fault(const Scene& scene);
Found open_text_fault(const Scene& scene);
Found control_fault(const Scene& scene);

// Mistakes in what stands after a `=`: syntax_value_fault.cpp.
Found date_fault(const Scene& scene);
Found inline_table_fault(const Scene& scene);
Found trailing_fault(const Scene& scene);
Found value_fault(const Scene& scene);
Found comma_fault(const Scene& scene);
Found element_fault(const Scene& scene);

/// `"[" was opened at 1:5`
std::string opened_at(const Scene& scene, std::size_t bracket);

} // namespace thawslip::toml::syntax
