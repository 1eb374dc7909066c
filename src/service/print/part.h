#pragma once

#include "service/days.h"
#include "service/messages.h"

#include <functional>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

namespace thawslip::service {

/// Which of the bags prints are made for, as a cook says it: for all where nothing is said. What
/// is said together must hold together.
struct Part {
    std::string dishes = {}; ///< words of dishes, as bags are found by; a comma between several
    std::string bags = {};   ///< ids and numbers: "3-5, K7Q-2M4-9XC"
    std::string from = {};   ///< an id or a number: that bag and those printed behind it
    bool only_new = false;   ///< bags that no print of this kind has yet
    std::optional<int> copies = {}; ///< of each print; nothing: as the settings say
    /// Of a print in the archive: the ids that it was of. None: of all.
    std::vector<std::string> ids = {};
    friend bool operator==(const Part&, const Part&) = default;
};

inline constexpr int most_copies = 99;

/// Whether it is all bags.
bool is_whole(const Part& part);

/// A bag that may be printed.
struct NamedBag {
    std::string dish;
    std::string id;
    int number = 1; ///< within its dish, as printed: bag 3 of 8
};

/// The bags of days, in the order of printing.
std::vector<NamedBag> bags_in(const Days& days);

std::set<std::string> ids_of(std::span<const NamedBag> bags);

inline constexpr int most_bag_number = 99'999; ///< a longer number is an id without its dashes

/// Whether a text is nothing but numbers of bags: "3-5".
bool are_numbers(const std::string& text);

/// What a bag's number is, where bags are named by numbers.
enum class Numbers {
    OfDish,  ///< within its dish, as on its label
    OfPrint, ///< its place in the order of printing
};

/// What is known of bags elsewhere.
struct PartSource {
    Numbers numbers = Numbers::OfPrint; ///< OfDish where the part names dishes
    /// The newest id of a bag that is known by `id`; the same where none is.
    std::function<std::string(const std::string& id)> newest_id = {};
    std::function<std::set<std::string>()> printed = {}; ///< ids that have been printed
};

/// The ids of a part of `bags`, which stand in the order of printing. A number counts within its
/// dish where `dishes` are named, else as the source says. What is not there is said
/// with what comes near; then there are no bags. Where all of them have been printed, none are
/// left of `only_new`.
Outcome<std::set<std::string>> bags_of_part(std::span<const NamedBag> bags, const Part& part,
                                            const PartSource& source);

} // namespace thawslip::service
