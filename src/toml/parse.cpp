// The only file that includes toml++.

#include "base/utf8.h"
#include "toml/document.h"
#include "toml/faults.h"
#include "toml/mend.h"
#include "toml/outline.h"
#include "toml/position.h"
#include "toml/syntax_fault.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>
#include <set>
#include <span>
#include <toml++/toml.h>
#include <tuple>
#include <variant>

namespace thawslip::toml {
namespace {

Mark mark_of(const ::toml::source_region& region) {
    return {region.begin.line, region.begin.column, region.end.line, region.end.column};
}

/// Turns toml++'s nodes into our values. What stands on a mended line is Unreadable.
class Converter {
public:
    explicit Converter(const std::set<std::uint32_t>& mended) : mended_{mended} {}

    Value convert(const ::toml::node& node) const;

private:
    /// toml++ iterates tables by name; the order of the file is that of the keys' places.
    Members convert_table(const ::toml::table& table) const {
        Members members;
        for (const auto& [key, node] : table) {
            members.list.push_back({std::string{key.str()}, mark_of(key.source()), convert(node)});
        }
        std::ranges::stable_sort(members.list, {}, [](const Member& each) {
            return std::tuple{each.key_mark.line, each.key_mark.column};
        });
        return members;
    }

    Array convert_array(const ::toml::array& array) const {
        Array elements;
        elements.elements.reserve(array.size());
        for (const auto& node : array) {
            elements.elements.push_back(convert(node));
        }
        return elements;
    }

    const std::set<std::uint32_t>& mended_;
};

Date convert_date(const ::toml::date& date) {
    return Date{std::chrono::year{date.year}, std::chrono::month{date.month},
                std::chrono::day{date.day}};
}

Value Converter::convert(const ::toml::node& node) const {
    const auto mark = mark_of(node.source());
    switch (node.type()) {
    case ::toml::node_type::table: return {convert_table(*node.as_table()), mark};
    case ::toml::node_type::array: return {convert_array(*node.as_array()), mark};
    case ::toml::node_type::string: return {node.as_string()->get(), mark};
    case ::toml::node_type::integer:
        if (mended_.contains(mark.line)) {
            return {Unreadable{}, mark};
        }
        return {node.as_integer()->get(), mark};
    case ::toml::node_type::floating_point: return {node.as_floating_point()->get(), mark};
    case ::toml::node_type::boolean: return {node.as_boolean()->get(), mark};
    case ::toml::node_type::date: return {convert_date(node.as_date()->get()), mark};
    case ::toml::node_type::time: return {OtherTime{"time of day"}, mark};
    case ::toml::node_type::date_time: return {OtherTime{"date with a time"}, mark};
    case ::toml::node_type::none: break;
    }
    return {Members{}, mark};
}

Diagnostic fault_at(std::string_view text, const std::string& file, std::size_t offset,
                    std::string message) {
    const auto where = position_of(text, offset);
    return {Severity::Error, {file, where.line, where.column, 1}, {}, std::move(message), {}};
}

Diagnostic not_utf8(std::string_view text, const std::string& file, std::size_t offset) {
    const auto byte = static_cast<unsigned char>(text[offset]);
    auto fault =
        fault_at(text, file, offset, fmt::format("the byte 0x{:02X} is not UTF-8", unsigned{byte}));
    const bool utf16 = offset == 0 && (byte == 0xFF || byte == 0xFE);
    fault.hints = {utf16 ? "this looks like UTF-16: save the file as UTF-8"
                         : "save the file as UTF-8"};
    return fault;
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

/// A NUL is no character of TOML 1.0 ("Spec"), and shown to the user it would be nothing at all.
Diagnostic refuse_nul(std::string_view text, const std::string& file, std::size_t offset) {
    auto fault = fault_at(text, file, offset, "the byte 0x00 is not allowed in TOML");
    constexpr std::size_t one_letter = 4; // of UTF-16, at most
    if (offset < one_letter) {
        fault.hints = {"this looks like UTF-16: save the file as UTF-8"};
    }
    return fault;
}

/// What must be refused before a recursive parser sees the text.
std::optional<Diagnostic> refuse_early(std::string_view text, const std::string& file,
                                       const Limits& limits) {
    if (text.size() > limits.bytes) {
        return Diagnostic{
            Severity::Error,
            {file, 0, 0, 0},
            {},
            too_large(fmt::format("{} bytes", text.size()), fmt::format("{} bytes", limits.bytes)),
            {}};
    }
    const auto bad_byte = first_invalid_utf8(text);
    const auto nul = text.find('\0');
    if (nul < bad_byte.value_or(text.size())) {
        return refuse_nul(text, file, nul);
    }
    if (bad_byte) {
        return not_utf8(text, file, *bad_byte);
    }
    if (const auto bad = lone_return(text)) {
        auto fault = fault_at(text, file, *bad, "a carriage return without a line feed");
        fault.hints = {"save the file with the line ends of Unix or of Windows"};
        return fault;
    }
    if (const auto deep = outline(text, text.size(), limits.depth).too_deep) {
        return fault_at(text, file, *deep, too_deep(limits.depth));
    }
    return std::nullopt;
}

struct SyntaxErrorAt {
    SyntaxError error;
    Spoilt spoilt = Spoilt::Value;
};

std::variant<Value, SyntaxErrorAt> parse_once(std::string_view text,
                                              const std::set<std::uint32_t>& mended) {
    try {
        return Converter{mended}.convert(::toml::parse(text));
    } catch (const ::toml::parse_error& error) {
        const auto begin = error.source().begin;
        const std::string description{error.description()};
        const bool again = description.find("cannot redefine existing") != std::string::npos;
        return SyntaxErrorAt{{{begin.line, begin.column}, description},
                             again ? Spoilt::Line : Spoilt::Value};
    }
}

/// Parses until nothing is wrong any more, mending one line after the other; gives up where a
/// mistake may reach beyond its line, and after so many that nobody reads on.
std::optional<Value> parse_and_mend(std::string text, const std::string& file,
                                    Diagnostics& faults) {
    constexpr std::size_t most_mended = 20;
    std::set<std::uint32_t> mended;
    for (;;) {
        auto outcome = parse_once(text, mended);
        if (auto* value = std::get_if<Value>(&outcome)) {
            return std::move(*value);
        }
        const auto& [error, spoilt] = std::get<SyntaxErrorAt>(outcome);
        auto fault = explain_syntax(text, file, error);
        if (mended.contains(fault.where.line)) {
            return std::nullopt; // mending did not help: what is said now would be about our text
        }
        const auto culprit = offset_of(text, {fault.where.line, fault.where.column});
        faults.push_back(std::move(fault));
        const auto line = mend_line(text, culprit, spoilt);
        if (!line || mended.size() == most_mended) {
            return std::nullopt;
        }
        mended.insert(*line);
    }
}

/// Gives each fault of a mended line the key whose value it spoilt.
void name_keys(const Value& value, const KeyPath& path, std::span<Diagnostic> faults) {
    if (const auto* members = std::get_if<Members>(&value.content)) {
        for (const auto& each : members->list) {
            name_keys(each.value, path.key(written_key(each.key)), faults);
        }
    } else if (const auto* array = std::get_if<Array>(&value.content)) {
        for (std::size_t i = 0; i < array->elements.size(); ++i) {
            name_keys(array->elements[i], path.index(i), faults);
        }
    } else if (std::holds_alternative<Unreadable>(value.content)) {
        const auto fault = std::ranges::find_if(faults, [&value](const Diagnostic& each) {
            return each.where.line == value.mark.line;
        });
        if (fault != faults.end()) {
            fault->key = path;
        }
    }
}

} // namespace

Document parse(std::string text, std::string file, Diagnostics& faults, const Limits& limits) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) {
        text.erase(0, byte_order_mark.size());
    }
    file = printable(file);
    if (auto fault = refuse_early(text, file, limits)) {
        faults.push_back(std::move(*fault));
        const bool too_long = text.size() > limits.bytes;
        return {std::move(file), too_long ? std::string{} : std::move(text)};
    }
    const auto known = faults.size();
    auto root = parse_and_mend(text, file, faults);
    if (!root) {
        return {std::move(file), std::move(text)};
    }
    const auto mistakes = std::span{faults}.subspan(known);
    if (!mistakes.empty()) {
        name_keys(*root, KeyPath{}, mistakes);
    }
    const auto state = mistakes.empty() ? Document::State::WellFormed : Document::State::Mended;
    return {std::move(file), std::move(text), std::move(*root), state};
}

} // namespace thawslip::toml
