#include "archive/relabelled.h"

namespace thawslip::archive {
namespace {

/// Whether an old label says something else about what is in the bag. A dish that was of no kind
/// may have got one since from a program that knows more words.
bool is_of_other_food(const PackageRecord& before, const PackageRecord& now) {
    return before.food && now.food &&
           (before.food->allergens != now.food->allergens ||
            (!before.food->classes.empty() && before.food->classes != now.food->classes));
}

} // namespace

bool is_relabelled(const PackageRecord& before, const PackageRecord& now) {
    const bool sooner =
        now.basis == kitchen::DateBasis::SetByCook && now.keep_until < before.keep_until;
    return sooner || is_of_other_food(before, now);
}

} // namespace thawslip::archive
