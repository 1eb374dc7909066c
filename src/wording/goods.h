#pragma once

#include "base/diagnostic.h"
#include "base/result.h"
#include "kitchen/measures/quantity.h"
#include "wording/style.h"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::wording {

/// What a shop keeps together.
struct GoodsKind {
    std::string key;  ///< "produce": its name is the phrase "goods.produce"; empty: `name` is
    std::string name; ///< in the cook's own words
};

/// A word for something that is bought, or for how it is counted.
struct GoodsWord {
    enum class Role { Thing, Wins, Whole, Measure, Size };
    Role role = Role::Thing;
    std::size_t kind = 0;      ///< of a Thing, Wins or Whole: which of the kinds
    std::string language = {}; ///< ISO 639-1; of the cook's own words empty
    std::string one = {};      ///< as it is written of one
    std::string several = {};  ///< as it is written of several
};

/// Everyday goods by kinds, in the order of the shopping list.
struct Goods {
    std::vector<GoodsKind> kinds;
    /// By stems of their words with single spaces between; both numbers of each.
    std::map<std::string, std::vector<GoodsWord>, std::less<>> words;
    std::size_t longest = 1; ///< words of the longest
};

/// Those that come with Thawslip: goods.toml.
const Goods& shipped_goods();

/// A cook's own: `[[kind]]` with a `name`, which may be one that comes with Thawslip, and `goods`,
/// words of that kind. Its kinds come first, in its order, and its words win; the others follow.
/// \returns them, or what is wrong with the text
Result<Goods, Diagnostics> own_goods(std::string_view toml, std::string_view file);

/// Which of the kinds something is of; nothing where no word of it is known.
std::optional<std::size_t> kind_of(const Goods& goods, std::string_view item);

/// Whether it comes from a shop: water and ice do not.
bool is_bought(const Goods& goods, std::string_view item);

/// "Vegetables and fruit"; "Other" for nothing.
std::string say_kind(const Goods& goods, std::optional<std::size_t> kind, const Style& style);

/// The item as several of it are called, where it is counted, more than one, and each word that
/// would change is known: "onion, sliced" → "onions, sliced"; else as it is written.
std::string in_number(const Goods& goods, const kitchen::Quantity& total, const Style& style);

/// How something is counted, and what it is: "bunches" and "sage" of "bunches sage", "manojo" and
/// "apio" of "manojo de apio".
struct MeasuredThing {
    std::string measure;
    std::string thing;
};

/// An item in these two parts; nothing where it does not begin with a word for a measure, where
/// nothing stands behind that, and where both together are a thing ("barra de pan").
std::optional<MeasuredThing> measured_thing(const Goods& goods, std::string_view item);

} // namespace thawslip::wording
