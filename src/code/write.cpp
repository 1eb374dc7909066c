#include "code/grammars.h"
#include "code/message.h"
#include "code/seal.h"

#include <array>

namespace thawslip::code {

std::span<const Grammar> grammars() {
    static const std::array all = {grammar_1, grammar_2, grammar_3};
    return all;
}

std::string write(const Message& message, const Grammar& grammar) {
    std::string text = grammar.write(folded(message));
    text += message.extent == Extent::SeeCard ? "\nSEE CARD * END " : "\nEND ";
    text += grammar.version;
    return text + check_characters(text);
}

std::string write(const Message& message) {
    return write(message, folded(message).other_thaws.empty() ? grammar_2 : grammar_3);
}

} // namespace thawslip::code
