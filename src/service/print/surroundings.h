#pragma once

#include "archive/archive.h"
#include "base/progress.h"
#include "base/result.h"
#include "layout/files/stock_file.h"
#include "layout/layout.h"
#include "typeset/face.h"
#include "wording/print.h"

#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace thawslip::service {

/// A text that comes with the program.
struct ShippedText {
    std::string name; ///< what it is called: its file's name without the ending
    std::string file; ///< for messages
    std::string text;
    /// The layout that it is, where whoever hands it out has read it; else it is read when needed.
    std::shared_ptr<const layout::Layout> layout = {};
};

/// What is done where only the cook can know which bags are meant.
enum class Doubts {
    Ask,         ///< and print nothing before it is answered
    AskForLists, ///< the same for what gives no bag an id
    Mention,     ///< and go on with ids that no other bag has
    Ignore,      ///< the same in silence
};

/// Whether plans are to know what is in the freezer beside their own bags.
enum class Stock { Unasked, Noted };

/// Where bags get their ids from.
struct IdSource {
    /// Opens what has been printed, when the days are known to be well. Nothing, or no function:
    /// nothing has been, and bags have the ids that they were planned with.
    std::function<std::optional<archive::Archive>()> archive = {};
    std::string station = {};       ///< Station::name of this computer
    archive::WhichBatch which = {}; ///< what the cook says; bags as they were typed
    Doubts doubts = Doubts::Ask;
    Stock stock = Stock::Unasked;
};

/// What a print asks the world for, as it needs it. Whoever calls knows where all this is kept.
/// \throws SystemFailure from any of them, where the system fails
struct Surroundings {
    /// The shipped stock of a name; nothing where there is none.
    std::function<std::optional<layout::StockReading>(const std::string& name)> stock;
    std::function<layout::StockShelf()> stocks; ///< all that are shipped
    /// The layouts that are shipped for these kinds of print, by name; others may be among them.
    std::function<std::vector<ShippedText>(const std::set<wording::Kind>& kinds)> layouts;
    /// The text of a file that the cook named, or why it cannot be had.
    std::function<Result<std::string, Diagnostic>(const std::string& file)> own_file;
    std::function<typeset::FontSet()> fonts;
    IdSource ids = {};
    Progress progress = {}; ///< of what is laid out
    /// Where the last print on the stock of a name stopped; nothing, or no function: not known.
    std::function<std::optional<archive::UsedSheet>(const std::string& stock)> used_sheet = {};
};

} // namespace thawslip::service
