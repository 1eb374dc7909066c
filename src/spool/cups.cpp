#include "spool/libcups.h"
#include "spool/printer.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <memory>

namespace thawslip::spool {
namespace {

constexpr int patience_ms = 5000;

/// \pre libcups() is there: find_printer sees to it
const LibCups& cups() {
    return *libcups();
}

using Connection = std::unique_ptr<http_t, decltype(cups().httpClose)>;

/// The server that CUPS_SERVER, client.conf or the system names.
Connection connect() {
    return {cups().httpConnect2(cups().cupsServer(), cups().ippPort(), nullptr, AF_UNSPEC,
                                cups().cupsEncryption(), 1, patience_ms, nullptr),
            cups().httpClose};
}

Fault no_server() {
    return {Trouble::NoServer,
            std::string{cups().cupsServer()} + ": " + cups().cupsLastErrorString(),
            {}};
}

Fault refused() {
    return {Trouble::Refused, cups().cupsLastErrorString(), {}};
}

/// All printers a server has.
class Printers {
public:
    explicit Printers(http_t* server) : count_{cups().cupsGetDests2(server, &first_)} {}
    Printers(const Printers&) = delete;
    Printers& operator=(const Printers&) = delete;
    ~Printers() { cups().cupsFreeDests(count_, first_); }

    std::vector<std::string> names() const {
        std::vector<std::string> names;
        names.reserve(static_cast<std::size_t>(count_));
        for (int i = 0; i < count_; ++i) {
            names.emplace_back(first_[i].name);
        }
        std::ranges::sort(names);
        names.erase(std::unique(names.begin(), names.end()), names.end());
        return names;
    }
    const cups_dest_t* named(const std::string& name, const std::string& instance) const {
        return cups().cupsGetDest(name.c_str(), instance.empty() ? nullptr : instance.c_str(),
                                  count_, first_);
    }
    const cups_dest_t* usual() const {
        const auto* chosen = cups().cupsGetDest(nullptr, nullptr, count_, first_);
        return chosen == nullptr && count_ == 1 ? first_ : chosen;
    }
    bool empty() const { return count_ == 0; }

private:
    cups_dest_t* first_ = nullptr; // filled by cupsGetDests2, so it stands before the count
    int count_ = 0;
};

Printer printer_at(const cups_dest_t& found) {
    return {found.name, found.instance != nullptr ? found.instance : ""};
}

/// One printer with what the server knows of it.
struct Destination {
    std::unique_ptr<cups_dest_t, void (*)(cups_dest_t*)> printer;
    std::unique_ptr<cups_dinfo_t, decltype(cups().cupsFreeDestInfo)> details;
};

Destination destination(http_t* server, const Printer& printer) {
    auto* found =
        cups().cupsGetNamedDest(server, printer.name.c_str(),
                                printer.instance.empty() ? nullptr : printer.instance.c_str());
    auto* details = found == nullptr ? nullptr : cups().cupsCopyDestInfo(server, found);
    return {{found, [](cups_dest_t* one) { cups().cupsFreeDests(1, one); }},
            {details, cups().cupsFreeDestInfo}};
}

/// Name and value of each job attribute (PWG 5100.13 and RFC 8011 have their meaning).
class JobOptions {
public:
    JobOptions() = default;
    JobOptions(const JobOptions&) = delete;
    JobOptions& operator=(const JobOptions&) = delete;
    ~JobOptions() { cups().cupsFreeOptions(count_, first_); }

    void add(const char* name, const std::string& value) {
        count_ = cups().cupsAddOption(name, value.c_str(), count_, &first_);
    }
    int count() const { return count_; }
    cups_option_t* first() const { return first_; }

private:
    int count_ = 0;
    cups_option_t* first_ = nullptr;
};

void ask(JobOptions& options, const Ticket& ticket) {
    options.add("media", media_name(ticket.sheet, ticket.feed));
    options.add("print-scaling", "none");
    options.add("sides", "one-sided");
    options.add("copies", "1");
}

bool send(http_t* server, std::istream& file) {
    std::array<char, 65536> block{};
    while (file.read(block.data(), block.size()) || file.gcount() > 0) {
        const auto status = cups().cupsWriteRequestData(server, block.data(),
                                                        static_cast<std::size_t>(file.gcount()));
        if (status != HTTP_STATUS_CONTINUE) {
            return false;
        }
    }
    return true;
}

int hundredths_of_mm(Length length) {
    return static_cast<int>(std::lround(length.in_millimetres() * 100.0));
}

} // namespace

Result<Printer, Fault> find_printer(const std::string& name) {
    if (libcups() == nullptr) {
        return Failure{Fault{Trouble::NoLibrary, {}, {}}};
    }
    const auto server = connect();
    if (!server) {
        return Failure{no_server()};
    }
    const Printers printers{server.get()};
    if (printers.empty()) {
        return Failure{Fault{Trouble::NoPrinters, cups().cupsServer(), {}}};
    }
    if (name.empty()) {
        const auto* usual = printers.usual();
        if (usual == nullptr) {
            return Failure{Fault{Trouble::NoUsualOne, {}, printers.names()}};
        }
        return printer_at(*usual);
    }
    const auto slash = name.find('/');
    const auto* found = printers.named(name.substr(0, slash),
                                       slash == std::string::npos ? "" : name.substr(slash + 1));
    if (found == nullptr) {
        return Failure{Fault{Trouble::NoSuchPrinter, {}, printers.names()}};
    }
    return printer_at(*found);
}

Result<std::vector<std::string>, Fault> printers() {
    if (libcups() == nullptr) {
        return Failure{Fault{Trouble::NoLibrary, {}, {}}};
    }
    const auto server = connect();
    if (!server) {
        return Failure{no_server()};
    }
    const Printers there{server.get()};
    if (there.empty()) {
        return Failure{Fault{Trouble::NoPrinters, cups().cupsServer(), {}}};
    }
    auto names = there.names();
    if (const auto* usual = there.usual()) {
        const auto at = std::ranges::find(names, std::string{usual->name});
        std::rotate(names.begin(), at, std::next(at));
    }
    return names;
}

Result<int, Fault> print(const Printer& printer, const std::string& file, const Ticket& ticket) {
    const auto server = connect();
    if (!server) {
        return Failure{no_server()};
    }
    const auto to = destination(server.get(), printer);
    if (!to.details) {
        return Failure{refused()};
    }
    JobOptions options;
    ask(options, ticket);
    int job = 0;
    if (cups().cupsCreateDestJob(server.get(), to.printer.get(), to.details.get(), &job,
                                 ticket.title.c_str(), options.count(),
                                 options.first()) > IPP_STATUS_OK_EVENTS_COMPLETE) {
        return Failure{refused()};
    }
    std::ifstream document{file, std::ios::binary};
    const bool sent =
        cups().cupsStartDestDocument(server.get(), to.printer.get(), to.details.get(), job,
                                     ticket.title.c_str(), CUPS_FORMAT_PDF, options.count(),
                                     options.first(), 1) == HTTP_STATUS_CONTINUE &&
        send(server.get(), document) &&
        cups().cupsFinishDestDocument(server.get(), to.printer.get(), to.details.get()) <=
            IPP_STATUS_OK_EVENTS_COMPLETE;
    if (!sent) {
        const auto why = refused();
        cups().cupsCancelDestJob(server.get(), to.printer.get(), job);
        return Failure{why};
    }
    return job;
}

std::string media_name(Size sheet, Feed feed) {
    if (libcups() == nullptr) {
        return {};
    }
    auto width = hundredths_of_mm(sheet.width);
    auto length = hundredths_of_mm(sheet.height);
    if (feed == Feed::Sheets && width > length) {
        std::swap(width, length);
    }
    const auto* media = cups().pwgMediaForSize(width, length);
    return media == nullptr ? std::string{} : media->pwg;
}

} // namespace thawslip::spool
