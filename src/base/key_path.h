#pragma once

#include <compare>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

namespace thawslip {

/// Where in a description a value stands, without files or lines: `package[2].thaw.method`.
///
/// Kitchen values carry it so that a rule can point at what the cook wrote although it has never
/// heard of files; the TOML document turns it into line and column. Positions in lists are
/// written counting from 1, as a person counts.
class KeyPath {
public:
    KeyPath() = default;
    explicit KeyPath(std::string text) : text_{std::move(text)} {}

    /// The path of the member `key` below this one.
    KeyPath key(std::string_view key) const {
        return KeyPath{text_.empty() ? std::string{key} : text_ + "." + std::string{key}};
    }
    /// The path of element `position` (from 0, as in code) below this one.
    KeyPath index(std::size_t position) const {
        return KeyPath{text_ + "[" + std::to_string(position + 1) + "]"};
    }

    /// Whether the other path is this one or lies below it; never for an empty one.
    bool leads_to(const KeyPath& other) const {
        const std::string_view rest = other.text_;
        return !empty() && rest.starts_with(text_) &&
               (rest.size() == text_.size() || rest[text_.size()] == '.' ||
                rest[text_.size()] == '[');
    }

    const std::string& text() const& { return text_; }
    std::string text() && { return std::move(text_); } // so that no loop outlives a temporary
    bool empty() const { return text_.empty(); }
    friend auto operator<=>(const KeyPath&, const KeyPath&) = default;

private:
    std::string text_;
};

} // namespace thawslip
