#pragma once

#include "layout/layout.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::layout {

/// One print's words, shaped: one Content for each area of the layout, in the layout's order.
using Contents = std::vector<Content>;

/// What a print may give up for room: an area, or the words of one that can be said shorter.
struct Concession {
    enum class What { Drop, Shorten };
    std::size_t area = 0;
    What what = What::Drop;
};

/// At which sizes a print is set: each of the layout's groups at a scale of its own, with the first
/// `conceded` of its concessions made but for those that were taken back.
struct Sizing {
    std::array<Scale, most_groups> scales;
    int conceded = 0;
    std::vector<std::size_t> taken_back = {}; ///< places in the order of concessions
};

/// All groups at one scale.
Sizing sizing_at(Scale scale, int conceded);

/// The scale at which an area stands.
Scale scale_of(const Area& area, const Sizing& sizing);

/// Shapes what a print says in each area; or names a character that cannot be set.
Result<Contents, ContentFault> prepare(const Layout& layout, const wording::Print& print,
                                       Shaper& shaper);

/// Where one area came to stand.
struct PlacedArea {
    bool shown = false;
    std::size_t form = 0; ///< of its words; see Content::in
    TypeSize type;
    Rect room;  ///< the area's rectangle, from the top left of the room given
    Rect place; ///< where it is drawn inside `room`
};

/// A print's areas at one sizing.
struct Arrangement {
    std::vector<PlacedArea> areas; ///< in the layout's order
    std::vector<Rect> rules;
    Length overflow;        ///< by how much it is too high or too wide; 0 when it fits
    std::string tightest;   ///< the area that asks for most, for messages
    int cut_paragraphs = 0; ///< in which a word is wider than its line
    bool fits() const { return overflow <= Length::points(1e-6); }
};

/// Lays the areas out in `room`. The same room and a smaller scale never overflow more.
Arrangement arrange(const Layout& layout, const Contents& contents, Size room, const Sizing& sizing,
                    const typeset::FontSet& fonts);

/// Whether it fits, and no more words are cut than must be: a paragraph with a word that is too
/// wide even at its smallest size, with all conceded, may as well be cut at a larger one. \pre
/// `arrangement` is of these contents in this room
bool fits_whole(const Arrangement& arrangement, const Layout& layout, const Contents& contents,
                Size room, const typeset::FontSet& fonts);

/// The smallest sizes, with all conceded.
Sizing least_sizing(const Layout& layout, const Contents& contents);

/// What a print may give up, in the order in which it does.
std::vector<Concession> concessions(const Layout& layout, const Contents& contents);

/// What remains of an area once the concessions of `sizing` are made: nothing, or the form in which
/// its words stand.
std::vector<std::optional<std::size_t>> forms_in_use(const Layout& layout, const Contents& contents,
                                                     const Sizing& sizing);

} // namespace thawslip::layout
