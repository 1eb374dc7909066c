#pragma once

#include "base/length.h"
#include "toml/reader.h"
#include "toml/value.h"

#include <cstdint>
#include <fmt/format.h>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::toml {

/// A key as a reader asks for it: its name, and how a right value looks, as TOML would have it:
/// `{"weight", "\"2.2 kg\""}`. The example goes into hints.
struct Key {
    Key(const char* key_name, std::string_view key_example = {}) // NOLINT: implicit, for literals
        : name{key_name}, example{key_example} {}
    std::string_view name;
    std::string_view example;
};

/// A string with its key, so that what is read out of it can be placed.
struct Text {
    std::string value;
    KeyPath key;
};

/// One word of a closed set, and other spellings of it that are not taken but understood, so
/// that the hint can name the right one.
struct Word {
    std::string word;
    std::vector<std::string> also = {};
};

/// A word that was written: its position in the closed set, and where it stands.
struct WordAt {
    std::size_t position = 0;
    KeyPath key;
};

template <class T>
struct Range {
    T least;
    T most;
};

/// A table of the file. Each question ticks its key off and so declares it valid; a value of the
/// wrong type or out of range is reported where it stands, and counts as absent. When all has
/// been asked, `refuse_unknown` reports what is left over.
class Table {
public:
    Table(Reader& reader, KeyPath path, const Value& value);

    Reader& reader() const { return *reader_; }
    const KeyPath& path() const { return path_; }
    KeyPath path_of(const Key& key) const { return path_.key(key.name); }
    bool has(const Key& key) const; ///< does not tick off
    /// The string under a key that may hold something else; nullptr where it does. Does not tick
    /// off.
    const std::string* text_at(const Key& key) const;
    std::vector<std::string> keys() const; ///< all there are, in file order; ticks none off

    /// Reports the key as missing unless it is there; either way it still has to be asked for.
    void require(const Key& key);

    std::optional<Text> string(const Key& key); ///< any string, untouched
    /// A string that can be printed in one line of at most `most` characters, trimmed.
    std::optional<std::string> line(const Key& key, std::size_t most);
    std::optional<std::int64_t> integer(const Key& key, Range<std::int64_t> range);
    std::optional<double> real(const Key& key, Range<double> range); ///< takes whole numbers too
    std::optional<bool> boolean(const Key& key);
    std::optional<Date> date(const Key& key);
    std::optional<Length> length(const Key& key, Range<Length> range);
    /// The position in `words` of the word written; letter case does not matter. `what` ends the
    /// message `"frige" is not …`.
    std::optional<std::size_t> word(const Key& key, std::string_view what,
                                    std::span<const Word> words);
    /// The position of each word of a list. One that is none of `words` is reported, and counts as
    /// the first of them.
    std::vector<std::size_t> words(const Key& key, std::size_t most, std::string_view what,
                                   std::span<const Word> words);

    /// One word, or a list of at least one, each with its own key. One that is none of `words` is
    /// reported, and left out.
    std::vector<WordAt> one_or_several(const Key& key, std::size_t most, std::string_view what,
                                       std::span<const Word> words);

    /// A list of strings, each with its own key; `empty` where the key is absent.
    std::vector<Text> strings(const Key& key, std::size_t most);
    /// The same, where one string may stand without brackets.
    std::vector<Text> string_or_strings(const Key& key, std::size_t most);
    /// Lines of at most `most_characters` each, trimmed.
    std::vector<std::string> lines(const Key& key, std::size_t most, std::size_t most_characters);
    std::vector<double> reals(const Key& key, std::size_t most, Range<double> range);

    std::optional<Table> table(const Key& key);
    /// `[[key]]` in file order. Where more than `most` are written that is reported, and only
    /// the first `most` are read.
    std::vector<Table> tables(const Key& key, std::size_t most);

    /// Reports a key that is written otherwise now, and ticks it off. \param now "stock, below
    /// [labels]"
    void refuse_moved(const Key& key, std::string_view now);

    /// Reports every member that was never asked for, with the nearest key that was.
    void refuse_unknown();

private:
    const Value* ask(const Key& key); ///< nullptr for what is absent or unreadable
    /// The same for a value that holds a `T`; one that does not is reported.
    template <class T>
    const Value* ask_for(const Key& key, std::string_view expected) {
        const auto* value = ask(key);
        if (value == nullptr || std::holds_alternative<T>(value->content)) {
            return value;
        }
        refuse_type(key, expected, *value);
        return nullptr;
    }
    /// `number` if it is in range; else it is reported at `value`.
    template <class T>
    std::optional<T> within(const Value& value, const KeyPath& key, std::string_view subject,
                            T number, Range<T> range) {
        if (number >= range.least && number <= range.most) { // so that NaN is refused too
            return number;
        }
        reader_->error_at(value.place, key,
                          fmt::format("{} must be from {} to {}, not {}", subject, range.least,
                                      range.most, number));
        return std::nullopt;
    }
    const Value* ask_list(const Key& key, std::size_t most);
    void refuse_type(const Key& key, std::string_view expected, const Value& found,
                     Hints hints = {});
    /// The position of one that is written; nothing, and reported, where it is none of them.
    std::optional<std::size_t> position(const Text& text, std::string_view what,
                                        std::span<const Word> words);
    void refuse_count(const Key& key, std::size_t count, std::size_t most);

    Reader* reader_;
    KeyPath path_;
    const Value* value_;
    std::vector<std::string> asked_;
};

/// Reads a text as one trimmed line and reports it where it cannot be one.
std::optional<std::string> printable_line(Reader& reader, const Text& text, std::size_t most);

} // namespace thawslip::toml
