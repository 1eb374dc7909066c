#pragma once

#include "base/result.h"
#include "layout/frame.h"
#include "layout/layout.h"
#include "typeset/paragraph.h"
#include "wording/print.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace thawslip::layout {

/// One paragraph of an area, shaped and ready to be set at any size.
struct PreparedEntry {
    wording::Marker marker = wording::Marker::None;
    std::optional<typeset::PreparedParagraph> number; ///< "1." for Marker::Number
    std::optional<typeset::PreparedParagraph> label;  ///< unless it is run in
    bool label_above = false; ///< on a line of its own; else it hangs in a column
    typeset::PreparedParagraph text;
    wording::Role role = wording::Role::Text;
    double size = 1.0; ///< of its type, in sizes of the area's: larger for a heading
    std::vector<PreparedEntry> cells = {}; ///< of a table's row; then `text` is empty
    friend bool operator==(const PreparedEntry&, const PreparedEntry&) = default;
};

/// What stands in one text area of one print. Copies share their paragraphs, which never change.
class Content {
public:
    Content() = default;
    explicit Content(std::vector<PreparedEntry> entries)
        : entries_{std::make_shared<const std::vector<PreparedEntry>>(std::move(entries))} {}

    bool empty() const { return !entries_ || entries_->empty(); }
    /// \pre !empty()
    const std::vector<PreparedEntry>& entries() const { return *entries_; }

    /// Takes the paragraphs of `other` for its own where they are the same, so that the labels of
    /// one dish keep most of their words once.
    void share_with(const Content& other);

    bool code = false; ///< a code area of a print that has a code

private:
    std::shared_ptr<const std::vector<PreparedEntry>> entries_;
};

/// A character in a field that no face can set.
struct ContentFault {
    std::string field;
    KeyPath where;
    typeset::UnsettableCharacter character;
};

/// Paragraphs already shaped, by their words and weights: a day of a thousand labels has a few
/// dozen different paragraphs.
class Shaper {
public:
    explicit Shaper(const typeset::FontSet& fonts) : fonts_{&fonts} {}

    Result<typeset::PreparedParagraph, typeset::UnsettableCharacter>
    prepare(const std::vector<typeset::StyledText>& spans);

    const typeset::FontSet& fonts() const { return *fonts_; }

private:
    const typeset::FontSet* fonts_;
    std::map<std::string, typeset::PreparedParagraph> prepared_;
};

/// Shapes the fields that `area` takes from `print`; areas of other kinds have no words.
Result<Content, ContentFault> prepare_content(const Area& area, const wording::Print& print,
                                              Shaper& shaper);

/// How type stands in an area: its size and the distance between baselines.
struct TypeSize {
    Length size;
    Length leading;
};

/// What a content needs at one size and width.
struct Extent {
    Length height;
    Length first_baseline;   ///< from the top
    bool cuts_words = false; ///< a word is wider than its line
};

/// \pre width > 0
Extent measure(const Content& content, const Area& area, TypeSize type, Length width);

/// The width of the content's longest paragraph on one line: what a `content` column needs.
Length natural_width(const Content& content, const Area& area, TypeSize type);

/// The items of the content, lines under rows among them, placed with the area's top left corner at
/// `origin`. Takes exactly the room that `measure` gives.
std::vector<Item> set(const Content& content, const Area& area, TypeSize type, Rect room);

} // namespace thawslip::layout
