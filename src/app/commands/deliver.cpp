#include "app/commands/deliver.h"

#include "app/files/scratch_folder.h"
#include "base/nearest.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

std::string hint_of(const spool::Fault& fault, const std::string& name) {
    return near_names(name, fault.printers);
}

/// What went wrong, in words, and what to do about it.
std::string text_of(const spool::Fault& fault, const std::string& name) {
    constexpr const char* instead = "write a file with -o and print that, at 100 %";
    switch (fault.trouble) {
    case spool::Trouble::NotBuiltIn:
        return fmt::format("error: this thawslip was built without CUPS and cannot print\n"
                           "    hint: {}\n",
                           instead);
    case spool::Trouble::NoLibrary:
        return fmt::format("error: this computer has no libcups, which prints\n"
                           "    hint: install it (Debian: libcups2), or {}\n",
                           instead);
    case spool::Trouble::NoServer:
        return fmt::format("error: no CUPS server answers at {}\n    hint: start it, or {}\n",
                           fault.detail, instead);
    case spool::Trouble::NoPrinters:
        return fmt::format(
            "error: the CUPS server at {} has no printer\n    hint: add one, or {}\n", fault.detail,
            instead);
    case spool::Trouble::NoSuchPrinter:
        return fmt::format("error: there is no printer called \"{}\"\n    hint: {}\n", name,
                           hint_of(fault, name));
    case spool::Trouble::NoUsualOne:
        return fmt::format("error: no default printer is set\n"
                           "    hint: name one with --print: {}\n",
                           list_of(fault.printers));
    case spool::Trouble::Refused:
        return fmt::format("error: printer \"{}\" refused the job: {}\n", name, fault.detail);
    }
    return {};
}

ExitStatus status_of(const spool::Fault& fault) {
    const bool mistaken = fault.trouble == spool::Trouble::NoSuchPrinter ||
                          fault.trouble == spool::Trouble::NoUsualOne;
    return mistaken ? ExitStatus::Refused : ExitStatus::SystemFailed;
}

ExitStatus hand_over(const std::string& pdf, const spool::Printer& printer,
                     const spool::Ticket& ticket, Console console) {
    const auto job = spool::print(printer, pdf, ticket);
    if (!job) {
        console.err << text_of(job.fault(), printer.name);
        return status_of(job.fault());
    }
    console.err << fmt::format("note: printing on {}, job {}, at 100 % on {}\n", printer.name,
                               job.value(), spool::media_name(ticket.sheet, ticket.feed));
    return ExitStatus::Done;
}

} // namespace

std::string why_no_printer(const spool::Fault& fault) {
    const auto text = text_of(fault, {});
    constexpr std::string_view head = "error: ";
    return text.substr(head.size(), text.find('\n') - head.size());
}

Result<std::optional<spool::Printer>, ExitStatus>
wanted_printer(const std::optional<std::string>& name, Console console) {
    if (!name) {
        return std::optional<spool::Printer>{};
    }
    auto found = spool::find_printer(*name);
    if (!found) {
        console.err << text_of(found.fault(), *name);
        return Failure{status_of(found.fault())};
    }
    return std::optional{std::move(found).value()};
}

ExitStatus deliver(const WriteDocument& write, const std::string& output,
                   const std::optional<spool::Printer>& printer, const spool::Ticket& ticket,
                   Console console) {
    if (!output.empty()) {
        write(output);
    }
    if (!printer) {
        return ExitStatus::Done;
    }
    if (output.ends_with(".pdf")) {
        return hand_over(output, *printer, ticket, console);
    }
    const ScratchFolder scratch;
    const auto pdf = scratch.file("print.pdf");
    write(pdf);
    return hand_over(pdf, *printer, ticket, console);
}

} // namespace thawslip::app
