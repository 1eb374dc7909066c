#pragma once

#include "archive/archive.h"
#include "service/messages.h"

#include <functional>
#include <span>
#include <string>
#include <vector>

namespace thawslip::service {

/// What is meant by one part of what was typed.
struct NamedBags {
    std::vector<archive::Bag> bags; ///< the oldest first
    bool by_id = false;             ///< each by an id of its own; else all that fit the words
};

/// What was typed, as a person means it: a comma stands between several ("tray lasagne, black bean
/// chilli"), unless a dish's name has it, and everything else belongs together.
std::vector<std::string> parts_of(archive::Archive& archive, const std::vector<std::string>& typed);

/// The bags meant by one part: ids as people type them, one or several, or words of a dish or their
/// beginnings. A word of nine letters may look like an id; only one that exists is taken for one.
/// What is neither is said, with the nearest ids and dishes there are; then there are no bags.
Outcome<NamedBags> named_bags(archive::Archive& archive, const std::string& part,
                              archive::Which which);

/// Asked which of several bags are meant. \returns their places in `bags`; none: nothing is chosen
using ChooseBags = std::function<std::vector<std::size_t>(std::string_view words,
                                                          std::span<const archive::Bag> bags)>;

/// The oldest of them, whatever they are.
std::vector<std::size_t> oldest_of(std::string_view words, std::span<const archive::Bag> bags);
/// All of them.
std::vector<std::size_t> all_of(std::string_view words, std::span<const archive::Bag> bags);

/// Whether a command is about one bag, or about any number.
enum class HowMany { One, Any };

/// Which bags a command can be about.
struct BagsAskedFor {
    std::vector<std::string> typed;
    /// Words mean bags in the first of these states that any of the dish is in: of what is out and
    /// what is frozen, the bag that is out is the one that was eaten. Where all are chosen, by
    /// `all_of`, they mean all that are out or frozen, as far as these states go.
    std::vector<archive::State> states;
    ChooseBags choose = {}; ///< nothing: several are refused, with their ids
    HowMany how_many = HowMany::Any;
};

/// The bags that are meant: each id, and for words the one bag that fits them or those chosen. A
/// bag is meant once, so that "stew, stew" are two.
Outcome<std::vector<archive::Bag>> chosen_bags(archive::Archive& archive,
                                               const BagsAskedFor& asked);

} // namespace thawslip::service
