#pragma once

#include "archive/archive.h"
#include "kitchen/plan.h"
#include "service/freezer/named_bags.h"
#include "service/messages.h"

#include <map>
#include <string>
#include <vector>

namespace thawslip::service {

/// A bag of the archive and what it was filled with.
struct KnownBag {
    archive::Bag bag;                ///< its newest id, its state, the date on its label
    kitchen::PlannedPackage package; ///< as its day's description has it, planned as it was printed
};

/// The packages of a day of the archive, read and planned with the settings of its newest print;
/// none where its description cannot be read any longer.
std::vector<kitchen::PlannedPackage> packages_of_day(archive::Archive& archive,
                                                     archive::DayKey day);

/// What bags of the archive were filled with: the newest description of their day that has them,
/// read and planned with the settings of its newest print. Each day is read once, however many of
/// its bags are asked for.
class PackagesOfBags {
public:
    explicit PackagesOfBags(archive::Archive& archive) : archive_{&archive} {}

    /// nullptr where the description cannot be read any longer: a later Thawslip wrote it, or it
    /// is not what was recorded. Valid as long as this object.
    const kitchen::PlannedPackage* of(const archive::Bag& bag);
    /// Says why there is none.
    void refuse(const archive::Bag& bag, Messages& messages) const;

private:
    archive::Archive* archive_;
    std::map<archive::DayKey, std::vector<kitchen::PlannedPackage>> days_;
};

/// Says of a description that is not what was recorded which it is, and what helps.
/// \param consequence added to what is said: "; nothing was written"
void refuse_rotten(const archive::StoredDay& day, Messages& messages,
                   const std::string& consequence = {});

/// A bag by its id as it is typed, or by words of its dish, and what it was filled with. Refused
/// where there is none, with the nearest ids and dishes there are; of several dishes that the words
/// fit, the one that is chosen.
Outcome<KnownBag> known_bag(archive::Archive& archive, const std::string& typed,
                            const ChooseBags& choose = {});

/// Which bags are to be eaten.
struct BagsToEat {
    std::vector<std::string> typed; ///< ids, or words of a dish
    int of_each = 1; ///< bags of each dish and each of its sizes, where words are given
};

/// The packages of the bags that are meant, the soonest date first, each with only those bags.
/// Refused where one is not known, or gone. Bags that are out already are cautioned about, and that
/// there are fewer of a dish than are wanted.
Outcome<std::vector<kitchen::PlannedPackage>> packages_to_eat(archive::Archive& archive,
                                                              const BagsToEat& wanted);

} // namespace thawslip::service
