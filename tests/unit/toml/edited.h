#pragma once

#include "support/edits.h"
#include "toml/edit.h"

#include <cstdint>
#include <doctest/doctest.h>
#include <string>
#include <utility>
#include <vector>

namespace thawslip::toml_test {

using What = toml::Edit::What;

/// A text after an edit; where that is refused, "refused: " and why.
inline std::string after(const std::string& text, const toml::Edit& edit) {
    CAPTURE(text);
    CAPTURE(edit.path.text());
    const auto result = toml::edit(text, {edit});
    if (!result) {
        return "refused: " + result.fault();
    }
    CHECK(test_support::fault_of(text, edit, result.value()) == "");
    return result.value().text;
}

inline std::string set(const std::string& text, const char* path, toml::Value value) {
    return after(text, {What::Set, KeyPath{path}, std::move(value)});
}

inline std::string take_out(const std::string& text, const char* path) {
    return after(text, {What::TakeOut, KeyPath{path}});
}

inline std::string add(const std::string& text, const char* path, toml::Value value) {
    return after(text, {What::Add, KeyPath{path}, std::move(value)});
}

inline std::string remove(const std::string& text, const char* path) {
    return after(text, {What::Remove, KeyPath{path}});
}

inline std::string copy(const std::string& text, const char* path) {
    return after(text, {What::Copy, KeyPath{path}});
}

inline std::string move(const std::string& text, const char* path, int by) {
    return after(text, {What::Move, KeyPath{path}, {}, by});
}

inline toml::Value number(std::int64_t number) {
    return {number, {}};
}

/// A list of whole numbers.
inline toml::Value numbers(const std::vector<std::int64_t>& all) {
    toml::Array list;
    for (const auto each : all) {
        list.elements.push_back(number(each));
    }
    return {std::move(list), {}};
}

} // namespace thawslip::toml_test
