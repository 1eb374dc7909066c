// For builds without CUPS.
#include "spool/printer.h"

namespace thawslip::spool {

Result<Printer, Fault> find_printer(const std::string&) {
    return Failure{Fault{Trouble::NotBuiltIn, {}, {}}};
}

Result<std::vector<std::string>, Fault> printers() {
    return Failure{Fault{Trouble::NotBuiltIn, {}, {}}};
}

Result<int, Fault> print(const Printer&, const std::string&, const Ticket&) {
    return Failure{Fault{Trouble::NotBuiltIn, {}, {}}};
}

std::string media_name(Size, Feed) {
    return {};
}

} // namespace thawslip::spool
