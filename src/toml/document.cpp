#include "toml/document.h"

#include "base/letters.h"
#include "base/utf8.h"

#include <algorithm>
#include <charconv>

namespace thawslip::toml {
namespace {

/// Takes a position in brackets, from 1, off the front of a key path: its element.
const Value* step_into(const Array& array, std::string_view& path) {
    std::size_t position = 0;
    const auto* first = path.data() + 1;
    std::from_chars(first, path.data() + path.size(), position);
    path.remove_prefix(std::min(path.find(']'), path.size() - 1) + 1);
    // A bad position wraps round and is found nowhere.
    return position - 1 < array.elements.size() ? &array.elements[position - 1] : nullptr;
}

/// Takes the next key or position off the front of a key path: what it leads to.
const Value* step(const Value& value, std::string_view& path) {
    if (path.front() == '[') {
        const auto* array = std::get_if<Array>(&value.content);
        return array != nullptr ? step_into(*array, path) : nullptr;
    }
    path.remove_prefix(path.front() == '.' ? 1 : 0);
    const auto key = path.substr(0, path.find_first_of(".["));
    path.remove_prefix(key.size());
    return member(value, key);
}

struct Found {
    const Value* value = nullptr;
    bool exact = true;
};

Found find(const Value& root, std::string_view path) {
    Found found{&root, true};
    while (!path.empty()) {
        const auto* next = step(*found.value, path);
        if (next == nullptr) {
            return {found.value, false};
        }
        found.value = next;
    }
    return found;
}

/// Whether the source spells the string at `start` out as it is, so that offsets can be counted.
bool is_verbatim(std::string_view text, std::size_t start, std::string_view value) {
    const auto source = text.substr(start, value.size() + 2); // with its quotes
    return source.back() == source.front() && source.substr(1, value.size()) == value;
}

} // namespace

const Value* member(const Value& value, std::string_view key) {
    const auto* members = std::get_if<Members>(&value.content);
    if (members == nullptr) {
        return nullptr;
    }
    auto it = std::ranges::find(members->list, key, &Member::key);
    if (it == members->list.end()) {
        it = std::ranges::find_if(
            members->list, [key](const Member& each) { return same_but_for_case(each.key, key); });
    }
    return it == members->list.end() ? nullptr : &it->value;
}

Document::Document(std::string file, std::string text)
    : file_{std::move(file)}, text_{std::move(text)}, root_{std::make_shared<const Value>()} {
    for (auto end = text_.find('\n'); end != std::string::npos; end = text_.find('\n', end + 1)) {
        lines_.push_back(end + 1);
    }
}

void Document::set(Value root, State state) {
    root_ = std::make_shared<const Value>(std::move(root));
    state_ = state;
}

SourceSpan Document::span(Stretch stretch) const {
    const auto line = std::ranges::upper_bound(lines_, stretch.begin) - lines_.begin();
    const auto start = lines_[static_cast<std::size_t>(line - 1)];
    const auto line_end = std::min(text_.find_first_of("\r\n", stretch.begin), text_.size());
    const auto end = std::max(stretch.begin, std::min(stretch.end, line_end));
    const auto count = [this](std::size_t from, std::size_t to) {
        return static_cast<std::uint32_t>(
            count_code_points(std::string_view{text_}.substr(from, to - from)));
    };
    return {file_, static_cast<std::uint32_t>(line), count(start, stretch.begin) + 1,
            count(stretch.begin, end)};
}

SourceSpan Document::place(const KeyPath& path) const {
    const auto* value = find(*root_, path.text()).value;
    return value == root_.get() ? SourceSpan{file_, 1, 1, 1} : span(value->place);
}

SourceSpan Document::place_inside(const KeyPath& path, std::size_t offset) const {
    auto where = place(path);
    const auto found = find(*root_, path.text());
    const auto* string = std::get_if<std::string>(&found.value->content);
    if (!found.exact || string == nullptr ||
        !is_verbatim(text_, found.value->place.begin, *string)) {
        return where;
    }
    const auto before = std::string_view{*string}.substr(0, std::min(offset, string->size()));
    const auto skipped = static_cast<std::uint32_t>(count_code_points(before)) + 1;
    return {file_, where.line, where.column + skipped,
            where.length - std::min(skipped + 1, where.length)};
}

} // namespace thawslip::toml
