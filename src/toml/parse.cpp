#include "base/printable.h"
#include "base/text_file.h"
#include "base/utf8.h"
#include "toml/document.h"
#include "toml/library.h"
#include "toml/scan.h"

#include <fmt/format.h>
#include <optional>

namespace thawslip::toml {
namespace {

constexpr const char* save_as_utf8 = "save the file as UTF-8";
constexpr const char* looks_like_utf16 = "this looks like UTF-16: save the file as UTF-8";

Diagnostic fault_at(const Document& document, std::size_t offset, std::string message,
                    std::vector<std::string> hints) {
    auto where = document.span({offset, offset});
    where.length = 1;
    return {Severity::Error, std::move(where), {}, std::move(message), std::move(hints)};
}

Diagnostic not_utf8(const Document& document, std::size_t offset) {
    const auto byte = static_cast<unsigned char>(document.text()[offset]);
    const bool utf16 = offset == 0 && (byte == 0xFF || byte == 0xFE);
    return fault_at(document, offset, fmt::format("the byte 0x{:02X} is not UTF-8", unsigned{byte}),
                    {utf16 ? looks_like_utf16 : save_as_utf8});
}

/// The first carriage return that ends no line: TOML 1.0 ends lines with LF or CRLF ("Spec").
std::optional<std::size_t> lone_return(std::string_view text) {
    for (auto at = text.find('\r'); at != std::string_view::npos; at = text.find('\r', at + 1)) {
        if (text.substr(at, 2) != "\r\n") {
            return at;
        }
    }
    return std::nullopt;
}

/// What must be refused before the text is read as TOML.
std::optional<Diagnostic> refuse_early(const Document& document) {
    const auto& text = document.text();
    const auto bad_byte = first_invalid_utf8(text);
    const auto nul = text.find('\0');
    if (nul < bad_byte.value_or(text.size())) {
        constexpr std::size_t one_letter = 4;                                  // of UTF-16, at most
        return fault_at(document, nul, "the byte 0x00 is not allowed in TOML", // "Spec"
                        nul < one_letter ? std::vector<std::string>{looks_like_utf16}
                                         : std::vector<std::string>{});
    }
    if (bad_byte) {
        return not_utf8(document, *bad_byte);
    }
    if (const auto bad = lone_return(text)) {
        return fault_at(document, *bad, "a carriage return without a line feed",
                        {"save the file with the line ends of Unix or of Windows"});
    }
    return std::nullopt;
}

void add_mistakes(const Document& document, const std::vector<Mistake>& mistakes,
                  Diagnostics& faults) {
    for (const auto& [where, message, hints, key] : mistakes) {
        faults.push_back({Severity::Error, document.span(where), key, message, hints});
    }
}

/// What our own reading let pass and the library refuses; the document is Lost then.
std::optional<Diagnostic> refuse_late(const Document& document) {
    const auto objection = library_objection(document.text());
    if (!objection) {
        return std::nullopt;
    }
    return Diagnostic{Severity::Error,
                      {document.file(), objection->line, objection->column, 1},
                      {},
                      "this is no TOML 1.0: " + printable(objection->message),
                      {}};
}

} // namespace

Document parse(std::string text, std::string file, Diagnostics& faults, const Limits& limits) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) {
        text.erase(0, byte_order_mark.size());
    }
    file = printable(file);
    if (text.size() > limits.bytes) {
        faults.push_back(
            {Severity::Error,
             {file, 0, 0, 0},
             {},
             too_large(fmt::format("{} bytes", text.size()), fmt::format("{} bytes", limits.bytes)),
             {}});
        return {std::move(file), {}};
    }
    Document document{std::move(file), std::move(text)};
    auto early = refuse_early(document);
    if (early) {
        faults.push_back(std::move(*early));
        return document;
    }
    auto found = scan(document.text(), limits.depth);
    const bool well_formed = found.mistakes.empty();
    add_mistakes(document, found.mistakes, faults);
    auto late = well_formed ? refuse_late(document) : std::nullopt;
    if (late) {
        faults.push_back(std::move(*late));
    } else if (!found.lost) {
        document.set(std::move(found.root),
                     well_formed ? Document::State::WellFormed : Document::State::Spoilt);
    }
    return document;
}

} // namespace thawslip::toml
