#include "desk/tickets.h"

#include "base/letters.h"

#include <algorithm>
#include <numeric>

namespace thawslip::desk {
namespace {

constexpr std::size_t most_answers = 500;
constexpr std::size_t most_pdfs = 4;
constexpr std::size_t most_bytes = std::size_t{64} << 20U; ///< of all PDFs but the newest

template <class Kept>
auto find_kept(const std::deque<Kept>& all, const std::string& ticket) {
    return std::find_if(all.begin(), all.end(),
                        [&](const Kept& one) { return one.ticket == ticket; });
}

} // namespace

bool Tickets::is_ticket(const std::string& text) {
    constexpr std::size_t shortest = 16;
    constexpr std::size_t longest = 64;
    return text.size() >= shortest && text.size() <= longest &&
           std::ranges::all_of(text, [](char c) { return is_letter_or_digit(c) || c == '-'; });
}

const http::Response* Tickets::answer(const std::string& ticket) const {
    const auto found = find_kept(answered_, ticket);
    return found == answered_.end() ? nullptr : &found->answer;
}

void Tickets::keep(const std::string& ticket, http::Response answer, std::string pdf) {
    answered_.push_front({ticket, std::move(answer)});
    if (answered_.size() > most_answers) {
        answered_.pop_back();
    }
    if (pdf.empty()) {
        return;
    }
    pdfs_.push_front({ticket, std::move(pdf)});
    const auto bytes_of_older = [this] {
        return std::accumulate(
            pdfs_.begin() + 1, pdfs_.end(), std::size_t{},
            [](std::size_t sum, const Pdf& one) { return sum + one.bytes.size(); });
    };
    while (pdfs_.size() > most_pdfs || bytes_of_older() > most_bytes) {
        pdfs_.pop_back();
    }
}

const std::string* Tickets::pdf(const std::string& ticket) const {
    const auto found = find_kept(pdfs_, ticket);
    return found == pdfs_.end() ? nullptr : &found->bytes;
}

} // namespace thawslip::desk
