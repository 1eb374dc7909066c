// The only file that includes toml++.

#include "base/utf8.h"
#include "toml/document.h"
#include "toml/faults.h"
#include "toml/outline.h"
#include "toml/position.h"
#include "toml/syntax_fault.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>
#include <toml++/toml.h>
#include <tuple>

namespace thawslip::toml {
namespace {

Mark mark_of(const ::toml::source_region& region) {
    return {region.begin.line, region.begin.column, region.end.line, region.end.column};
}

Value convert(const ::toml::node& node);

/// toml++ iterates tables by name; the order of the file is that of the keys' places.
Members convert_table(const ::toml::table& table) {
    Members members;
    for (const auto& [key, node] : table) {
        members.list.push_back({std::string{key.str()}, mark_of(key.source()), convert(node)});
    }
    std::ranges::stable_sort(members.list, {}, [](const Member& each) {
        return std::tuple{each.key_mark.line, each.key_mark.column};
    });
    return members;
}

Array convert_array(const ::toml::array& array) {
    Array elements;
    elements.elements.reserve(array.size());
    for (const auto& node : array) {
        elements.elements.push_back(convert(node));
    }
    return elements;
}

Date convert_date(const ::toml::date& date) {
    return Date{std::chrono::year{date.year}, std::chrono::month{date.month},
                std::chrono::day{date.day}};
}

Value convert(const ::toml::node& node) {
    const auto mark = mark_of(node.source());
    switch (node.type()) {
    case ::toml::node_type::table: return {convert_table(*node.as_table()), mark};
    case ::toml::node_type::array: return {convert_array(*node.as_array()), mark};
    case ::toml::node_type::string: return {node.as_string()->get(), mark};
    case ::toml::node_type::integer: return {node.as_integer()->get(), mark};
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
    if (const auto bad = first_invalid_utf8(text)) {
        return not_utf8(text, file, *bad);
    }
    if (const auto deep = outline(text, text.size(), limits.depth).too_deep) {
        return fault_at(text, file, *deep, too_deep(limits.depth));
    }
    return std::nullopt;
}

} // namespace

Document parse(std::string text, std::string file, Diagnostics& faults, const Limits& limits) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.compare(0, byte_order_mark.size(), byte_order_mark) == 0) {
        text.erase(0, byte_order_mark.size());
    }
    file = printable(file);
    if (auto fault = refuse_early(text, file, limits)) {
        faults.push_back(std::move(*fault));
        const bool too_long = text.size() > limits.bytes;
        return {std::move(file), too_long ? std::string{} : std::move(text)};
    }
    try {
        auto root = convert(::toml::parse(std::string_view{text}));
        return {std::move(file), std::move(text), std::move(root)};
    } catch (const ::toml::parse_error& error) {
        const auto begin = error.source().begin;
        faults.push_back(explain_syntax(
            text, file, {{begin.line, begin.column}, std::string{error.description()}}));
        return {std::move(file), std::move(text)};
    }
}

} // namespace thawslip::toml
