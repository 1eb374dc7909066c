#pragma once

#include "base/geometry.h"
#include "base/result.h"

#include <string>
#include <vector>

namespace thawslip::spool {

/// A print queue of the printing system, as it is named there.
struct Printer {
    std::string name;
    std::string instance; ///< a set of saved options of the same queue; empty: none
};

/// Why nothing was handed over.
enum class Trouble {
    NotBuiltIn,    ///< the program was built without a printing system
    NoLibrary,     ///< this computer has no library to reach one
    NoServer,      ///< none answers: `detail` says where it was looked for and what went wrong
    NoPrinters,    ///< it answers, but has no printer
    NoSuchPrinter, ///< `printers` are those there are
    NoUsualOne,    ///< none was named, several are there and none of them is the usual one
    Refused,       ///< the printing system refused the job: `detail` is its reason
};
struct Fault {
    Trouble trouble = Trouble::Refused;
    std::string detail;
    std::vector<std::string> printers; ///< names, in order of the alphabet
};

/// The printer called `name`, or "name/instance". For an empty name the usual one: the user's or
/// the system's default printer, or the only one there is.
Result<Printer, Fault> find_printer(const std::string& name);

/// The names of all printers there are, the usual one first and then in order of the alphabet.
Result<std::vector<std::string>, Fault> printers();

/// How paper comes into the printer.
enum class Feed { Sheets, Roll };

/// What a job asks of the printer, beside the document: one copy on one side, at its own size.
struct Ticket {
    std::string title; ///< shown in the printer's list of jobs
    Size sheet;        ///< of the stock
    Feed feed = Feed::Sheets;
};

/// Hands the PDF in `file` to a printer that find_printer found, with the stock's paper as its
/// media and no scaling. Returns when the printing system has all of it. \returns the job's number
Result<int, Fault> print(const Printer& printer, const std::string& file, const Ticket& ticket);

/// A sheet's size as printers are told it: the standard name of a known paper, else a name made
/// of the size (PWG 5101.1, Media Standardized Names 2.0, section 5, self-describing names). A
/// sheet in landscape is named as it lies in the tray, short edge first; a roll's first number is
/// its width. Empty where there is no printing system to ask.
std::string media_name(Size sheet, Feed feed);

} // namespace thawslip::spool
