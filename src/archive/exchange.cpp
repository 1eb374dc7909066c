#include "archive/exchange.h"

namespace thawslip::archive {
namespace {

bool is_empty(const Contents& contents) {
    return contents.days.empty() && contents.bags.empty() && contents.prints.empty();
}

Merged add_missing(Archive& to, Archive& from) {
    const auto missing = from.missing_in(to);
    return is_empty(missing) ? Merged{} : to.merge(missing);
}

} // namespace

Exchanged exchange(Archive& station, Archive& server) {
    Exchanged exchanged;
    try {
        exchanged.sent = add_missing(server, station);
    } catch (const ArchiveFailure& failure) {
        if (failure.fault().kind == ArchiveFault::Kind::Away) {
            throw;
        }
        exchanged.unsent = failure.fault();
    }
    exchanged.fetched = add_missing(station, server);
    return exchanged;
}

} // namespace thawslip::archive
