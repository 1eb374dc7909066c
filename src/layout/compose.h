#pragma once

#include "base/progress.h"
#include "base/result.h"
#include "code/symbol.h"
#include "layout/frame.h"
#include "layout/sheets/impose.h"
#include "layout/sheets/printable_area.h"
#include "layout/sheets/stock.h"
#include "layout/solve.h"

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace thawslip::layout {

/// The layout of each kind of print in a job: several kinds may share a sheet.
using Layouts = std::map<wording::Kind, Layout>;

/// What is to be printed. Words and codes are made when they are needed and let go again: ten
/// thousand labels said in full would take more memory than all else about them.
struct Source {
    std::size_t count = 0;
    /// Everything that print `i` says: asked once for all that are alike, in order, and again for
    /// one that fails.
    std::function<wording::Print(std::size_t i)> print;
    /// What the code of print `i` may say, fullest first (code::texts); asked for prints that have
    /// a code, from several threads at once.
    std::function<std::vector<std::string>(std::size_t i)> code_texts;
    /// How many prints from `i` on say the same as print `i` but for their own fields: the bags of
    /// one dish, which are measured once. Not set: 1.
    std::function<std::size_t(std::size_t i)> alike = {};
    /// The fields in which print `i` differs from those it is alike, each in no more than one word.
    std::function<std::vector<wording::Field>(std::size_t i)> own_fields = {};
    Progress progress = {}; ///< of the codes, which take most of the time
};

/// Which prints of a dish are fitted: those that are to be drawn, or one that stands for all, where
/// only what fits is asked.
enum class Which { Every, FirstOfDish };

/// What prints are made for: which cells, which printer.
struct Medium {
    Stock stock;
    Which which = Which::Every;
    Imposition imposition;
    Correction correction;
    Insets unprinted = usual_insets;
    code::PrinterDots printer;
    Length least_module = Length::millimetres(0.4);
    std::string margin_note; ///< on every sheet, where no cell prints; empty: nothing
};

/// One print with its words shaped, its sizes found and its code chosen.
struct FittedPrint {
    std::size_t print = 0; ///< which print of the job; several where it runs on
    wording::Kind kind = wording::Kind::BagLabel;
    Contents contents;
    Sizing sizing;
    std::optional<code::SizedSymbol> symbol;
    bool runs_on = false;        ///< one of several that share what runs on from one to the next
    std::size_t measured_as = 0; ///< prints of the same number were measured by one
};

/// All prints of a job, ready to be drawn sheet by sheet.
struct Fitting {
    std::vector<FittedPrint> prints; ///< in the order given, each as many times as it has cards
    std::vector<Place> places;       ///< where each one goes
    int sheets = 0;
    std::size_t measured = 0; ///< for how many prints sizes were looked for: a dish, not its bags
};

/// A code that does not fit its area at all.
struct CodeRefusal {
    std::string dish;
    std::string bag_id;
    code::TooSmall too_small;
    KeyPath where;
};

/// A code that an independent reader did not read as what it should say.
struct UnreadableCode {
    std::string dish;
    std::string bag_id;
    KeyPath where;
};

/// What a print says in fields that it may not lack, and its layout has no place for.
struct Unplaced {
    std::vector<std::string> fields;
    SourceSpan picture; ///< the layout, where it draws its areas
};

/// Why a print cannot be made.
struct Fault {
    std::size_t print = 0; ///< its place in the job, from 0
    std::variant<ContentFault, Refusal, CodeRefusal, UnreadableCode, Unplaced> why;
};

/// Fits every print into a cell of the stock; either all of them or what is wrong with each that
/// fails, once for those that are alike. Every code is read back by an independent reader before it
/// may go to paper (some 60 µs each), unless the program was built without one. Prints of one kind
/// get the same sizes, see `agree`; a list has its own. \pre `layouts` has one for each kind of
/// print; check_imposition() finds nothing
Result<Fitting, std::vector<Fault>> fit(const Source& source, const Layouts& layouts,
                                        const Medium& medium, const typeset::FontSet& fonts);

/// The same with paragraphs that were shaped for others already: for trying one print on one stock
/// after the other.
Result<Fitting, std::vector<Fault>> fit(const Source& source, const Layouts& layouts,
                                        const Medium& medium, Shaper& shaper);

/// Gives each print of `fitting` its place on the sheets: `fit` does, and whoever changes which
/// prints there are has to do it again.
void place_prints(Fitting& fitting, const Medium& medium);

/// Everything on sheet `sheet` (from 0).
Frame draw_sheet(const Fitting& fitting, int sheet, const Layouts& layouts, const Medium& medium,
                 const typeset::FontSet& fonts);

/// One print alone, as large as its cell or its half of one: for looking at.
Frame draw_alone(const FittedPrint& fitted, const Layout& layout, const Medium& medium,
                 const typeset::FontSet& fonts);

/// What `check` tells about one print: the size each area got, and what was left out.
struct AreaReport {
    std::string area;
    bool left_out = false;     ///< words alone: a strip of months says again what the limit says
    bool is_shortened = false; ///< says less than it has to say, for room
    Length x_height;
};
std::vector<AreaReport> report(const FittedPrint& fitted, const Layout& layout);

} // namespace thawslip::layout
