#pragma once

#include "base/result.h"
#include "kitchen/date.h"

#include <cstddef>
#include <cstdint>
#include <set>
#include <string>
#include <string_view>

namespace thawslip::kitchen {

// A bag's id is nine symbols, printed in threes: `K7Q-2M4-9XW`. Eight say which bag it is, the
// ninth checks them. Where the kitchen has a number, three symbols before them say which kitchen:
// `00H-K7Q-2M4-9XC`. Then the check is of all eleven.
//
// Symbols and check: Crockford's Base32 (Douglas Crockford, "Base 32", crockford.com/base32).
// Its 32 symbols leave out I, L, O and U; the check is the number modulo 37, which catches every
// single wrong symbol and every swap of two neighbours, as long as the length is fixed (the check
// cannot see leading zeros). Numbers whose check would be one of the extra signs `*~$=U` are
// never given out, so that an id is made of letters and digits only. ISO/IEC 7064 MOD 37,2
// catches the same but needs I, L, O, U and `*`; MOD 37,36 lets some swaps pass.
//
// The number: the day, counted from 1970-01-01, modulo 4096, and 28 bits of a hash of batch, dish,
// date and bag number. So bags of two different days within 11 years (4096 days) never share an
// id; bags of one description never do either (`fresh_bag_id`). Only two descriptions of the same
// day can clash: for 95 bags in each about 1 in 26 000, and 4 % for a kitchen that writes two of
// them on 1040 days in ten years (200 000 bags). The archive gives a batch another number where
// an id of it is taken, and names the clash where two archives meet. Kitchens of different numbers
// never clash.
//
// The hash is FNV-1a of 64 bits, folded to 28 (Fowler, Noll, Vo; RFC 9923, "The FNV
// Non-Cryptographic Hash Algorithm"): published, the same on every machine and with every
// compiler, which std::hash is not, and good enough where nobody gains by forging an id.

/// Fowler, Noll and Vo's hash FNV-1a with 64 bits, from its offset basis on, or from another hash.
std::uint64_t fnv_1a(std::string_view bytes, std::uint64_t hash = 0xCBF29CE484222325U);

/// The check symbol for `payload` by Crockford's rule: its number modulo 37, as one of
/// `0–9 A–Z` without I L O U, or of `* ~ $ = U` for 32 to 36.
/// \pre every character of `payload` is one of Crockford's 32 symbols, capital letters
char crockford_check(std::string_view payload);

/// The highest number that a kitchen may have: with 0, for one without a number, 15 bits, which
/// are three symbols.
inline constexpr int highest_kitchen_number = 32'767;

/// Which batch of a dish, among those of one name made on one day: what was put into bags
/// together, as one description tells of it. DEVELOPERS.md, "The same bags", says what makes one.
struct Batch {
    int kitchen_number = 0;  ///< 0: the kitchen has none, and its ids are short
    std::string kitchen;     ///< its name when the batch was first printed; may be empty
    std::int64_t number = 1; ///< 1 for the first; of later ones any greater number
    int size = 0;            ///< DishSize::name; 0: the dish is packed in one size
    friend bool operator==(const Batch&, const Batch&) = default;
};

/// Says which bag an id is for.
struct BagName {
    std::string_view dish;
    Date made;
    int number = 1; ///< counts from 1 within the dish
    Batch batch = {};
};

/// The id of a bag as printed, with its dashes. The same name always gives the same id.
/// `attempt` counts up where an id is taken; see `fresh_bag_id`.
std::string bag_id(const BagName& name, int attempt = 0);

/// The first id of `bag_id(name, 0)`, `bag_id(name, 1)`… that is not in `taken`; added to it.
std::string fresh_bag_id(const BagName& name, std::set<std::string>& taken);

/// Why typed text is no bag id.
struct BagIdFault {
    enum class Kind { WrongLength, NotASymbol, WrongCheck };
    Kind kind = Kind::WrongLength;
    std::size_t offset = 0;  ///< byte offset in the typed text: the bad symbol, or the check
    std::string message;     ///< "8 letters and digits; expected 9, or 12…"
    char expected_check = 0; ///< for WrongCheck: what the last symbol is if the others are right
    friend bool operator==(const BagIdFault&, const BagIdFault&) = default;
};

/// Reads an id as people type one: small letters, O for 0, I or L for 1, dashes and spaces
/// anywhere or nowhere; nine symbols, or twelve with the kitchen's. The kitchen 000 is one without
/// a number. \returns the id as printed.
Result<std::string, BagIdFault> parse_bag_id(std::string_view typed);

} // namespace thawslip::kitchen
