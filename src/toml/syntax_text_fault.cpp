#include "base/utf8.h"
#include "toml/faults.h"
#include "toml/outline.h"
#include "toml/syntax_scene.h"

#include <fmt/format.h>

namespace thawslip::toml::syntax {
namespace {

/// Where the backslash stands of the escape in which the parser noticed a mistake. An escape is at
/// most ten characters long: \U0001F372.
std::size_t backslash_before(const Scene& scene) {
    constexpr std::size_t longest_escape = 10;
    const auto from = scene.noticed > longest_escape ? scene.noticed - longest_escape : 0;
    const auto before = scene.text.substr(from, scene.noticed - from).rfind('\\');
    return before == std::string_view::npos ? scene.noticed : from + before;
}

Explanation newer_escape(std::size_t begin, char letter) {
    return {begin,
            begin + 2,
            fmt::format("the escape \\{} is not part of TOML 1.0", letter),
            {fmt::format("TOML 1.1 has it; here write {}",
                         letter == 'e' ? "\\u001b" : "\\u00 and the two digits")}};
}

Explanation wrong_code_point(const Scene& scene) {
    const auto begin = backslash_before(scene);
    const auto end = std::max(scene.noticed, begin + 1);
    return {begin,
            end,
            in_quotes(scene.text.substr(begin, end - begin)) + " is no character of Unicode",
            {"write \\u and four hexadecimal digits, or \\U and eight; not D800 to DFFF"}};
}

} // namespace

Found escape_fault(const Scene& scene) {
    if (scene.says("hex digit") || scene.says("surrogates") || scene.says("unicode scalar")) {
        const bool in_text = outline(scene.text, scene.noticed, scene.text.size()).open_string ||
                             scene.says("surrogates") || scene.says("unicode scalar");
        return in_text ? Found{wrong_code_point(scene)} : std::nullopt;
    }
    if (!scene.says("escape sequence") || scene.noticed == 0) {
        return std::nullopt;
    }
    const auto begin = scene.noticed - 1;
    const char letter = scene.at(scene.noticed);
    if (letter == 'x' || letter == 'e') {
        return newer_escape(begin, letter);
    }
    auto end = scene.noticed;
    if (end < scene.text.size()) {
        next_code_point(scene.text, end);
    }
    return Explanation{begin,
                       end,
                       in_quotes(scene.text.substr(begin, end - begin)) + " is no escape of TOML",
                       {"write a backslash twice, or the text in 'single quotes'"}};
}

Found open_text_fault(const Scene& scene) {
    if (!scene.says("string")) {
        return std::nullopt;
    }
    const auto before = outline(scene.text, scene.noticed, scene.text.size()).open_string;
    const auto open =
        before ? before : outline(scene.text, scene.noticed + 1, scene.text.size()).open_string;
    const char c = scene.at(scene.noticed);
    if (!open || !(scene.says("end-of-file") || c == '\n' || c == '\r')) {
        return std::nullopt;
    }
    const auto triple = scene.text.substr(*open, 3);
    const bool multi_line = triple == "\"\"\"" || triple == "'''";
    return Explanation{*open,
                       std::min(scene.text.find_first_of("\r\n", *open), scene.text.size()),
                       "the text that begins here is not closed",
                       {fmt::format("put {} at its end", triple.substr(0, multi_line ? 3 : 1))}};
}

Found control_fault(const Scene& scene) {
    if (!scene.says("control character") || scene.noticed >= scene.text.size()) {
        return std::nullopt;
    }
    auto end = scene.noticed;
    const auto c = next_code_point(scene.text, end);
    return Explanation{scene.noticed, end,
                       fmt::format("the control character {} is not allowed in TOML", name_of(c))};
}

} // namespace thawslip::toml::syntax
