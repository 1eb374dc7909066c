#pragma once

#include "base/result.h"
#include "layout/frame.h"
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
    bool critical = false;
    std::vector<PreparedEntry> cells = {};              ///< of a table's row; then `text` is empty
    std::vector<typeset::PreparedParagraph> boxes = {}; ///< what stands beside each box to tick
    std::vector<PreparedEntry> below = {}; ///< further paragraphs, below the words or the cells
    bool repeats = false; ///< of a cell: it says what the row above says, and is left out
    std::vector<PreparedEntry> again = {};  ///< a heading as it is said again on another strip
    std::vector<PreparedEntry> second = {}; ///< the same in the second language, where that differs
    friend bool operator==(const PreparedEntry&, const PreparedEntry&) = default;
};

struct PreparedChart; // chart_area.h

/// What stands in one area of one print, in full and in its shorter forms. Copies share their
/// paragraphs, which never change.
class Content {
public:
    Content() = default;
    /// Of an area without words: whether it stands on the print.
    explicit Content(bool is_there) : is_there_{is_there} {}
    explicit Content(std::vector<PreparedEntry> entries)
        : is_there_{!entries.empty()}, entries_{std::make_shared<const std::vector<PreparedEntry>>(
                                           std::move(entries))} {}

    explicit Content(std::shared_ptr<const PreparedChart> chart)
        : is_there_{true}, chart_{std::move(chart)} {}

    /// Of an area that is drawn by a number of the print.
    static Content of_figure(int figure) {
        Content content{true};
        content.figure_ = figure;
        return content;
    }

    /// Of a code: the square that it asks for; 0: as wide as its columns.
    static Content of_side(Length side) {
        Content content{true};
        content.side_ = side;
        return content;
    }

    int figure() const { return figure_; }
    Length side() const { return side_; }
    /// An area that is not there takes no room.
    bool is_there() const { return is_there_; }
    bool has_words() const { return entries_ != nullptr && !entries_->empty(); }
    /// \pre is_there(), in an area with words
    const std::vector<PreparedEntry>& entries() const { return *entries_; }
    /// \pre is_there(), in an area with a chart
    const PreparedChart& chart() const { return *chart_; }

    /// In how many shorter forms it can be said.
    std::size_t shorter_forms() const { return shorter_.size(); }
    /// What stands there in `form`: 0 in full. \pre form <= shorter_forms()
    const Content& in(std::size_t form) const { return form == 0 ? *this : shorter_[form - 1]; }
    void add_shorter(Content content) { shorter_.push_back(std::move(content)); }

    /// Takes the paragraphs of `other` for its own where they are the same, so that the labels of
    /// one dish keep most of their words once.
    void share_with(const Content& other);

private:
    bool is_there_ = false;
    int figure_ = 0;
    Length side_;
    std::shared_ptr<const std::vector<PreparedEntry>> entries_;
    std::shared_ptr<const PreparedChart> chart_;
    std::vector<Content> shorter_;
};

/// Whether one of its paragraphs must not be overlooked.
bool says_critical(const Content& content);

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

} // namespace thawslip::layout
