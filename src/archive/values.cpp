#include "archive/values.h"

#include <algorithm>

namespace thawslip::archive {
namespace {

template <class Words, class Value>
std::string_view word_in(const Words& words, Value value) {
    const auto found = std::ranges::find(words, value, &Words::value_type::first);
    return found == words.end() ? std::string_view{} : found->second;
}

template <class Words>
auto value_in(const Words& words, std::string_view word) {
    const auto found = std::ranges::find(words, word, &Words::value_type::second);
    return found == words.end() ? std::nullopt : std::optional{found->first};
}

} // namespace

std::string_view word_of(kitchen::ThawMethod method) {
    return word_in(thaw_words, method);
}

std::optional<kitchen::ThawMethod> thaw_method_of(std::string_view word) {
    return value_in(thaw_words, word);
}

std::string_view word_of(kitchen::DateBasis basis) {
    return word_in(basis_words, basis);
}

std::optional<kitchen::DateBasis> basis_of(std::string_view word) {
    return value_in(basis_words, word);
}

std::string_view word_of(State state) {
    return word_in(state_words, state);
}

std::string_view shown_word(State state) {
    return state == State::Discarded ? "discarded" : word_of(state);
}

std::optional<State> state_of(std::string_view word) {
    return value_in(state_words, word);
}

} // namespace thawslip::archive
