#pragma once

#include "archive/archive.h"
#include "code/message.h"
#include "service/freezer/named_bags.h"
#include "service/messages.h"
#include "wording/style.h"

#include <span>
#include <string>
#include <variant>
#include <vector>

namespace thawslip::service {

/// The words of a label that a later Thawslip wrote: instructions all the same.
struct LaterWords {
    std::string text;
};

/// What was read of one bag.
using Reading = std::variant<code::Message, LaterWords>;

struct Readings {
    std::vector<Reading> bags; ///< in the order read
    Messages messages;         ///< what of it could not be read, and what to mind
};

/// What a handheld scanner typed: one text, or several with an empty line between.
std::vector<std::string> typed_texts(const std::string& typed);

/// The texts of the codes in a photograph (PNG, JPEG).
/// \param file what messages call it
Outcome<std::vector<std::string>> texts_in_photo(const std::string& bytes, const std::string& file);

/// Whether what somebody typed is the text of a code, and neither an id nor words of a dish: it has
/// several lines, or ends as such a text does.
bool is_code_text(const std::string& typed);

/// Whether one of the texts is a bag's id, for which the archive is asked.
bool name_bags(std::span<const std::string> texts);

/// Says where a bag is that is not in the freezer any longer, if its owner has said so.
void say_where(const archive::Bag& bag, Messages& messages);

/// A bag by its id as it is typed, or by words of its dish, in full: where its code has a few
/// words, its description knows whole sentences. \param archive nullptr: nothing has been printed
/// yet
Readings read_bag(archive::Archive* archive, const std::string& typed, const wording::Style& style,
                  const ChooseBags& choose = {});

/// The bags that these texts of codes are about; an id among them is read as `read_bag` does. What
/// a code says is told as it is; where the archive knows the bag, also where it is by now, and what
/// of the label is not so any longer.
Readings read_texts(archive::Archive* archive, std::span<const std::string> texts,
                    const wording::Style& style);

} // namespace thawslip::service
