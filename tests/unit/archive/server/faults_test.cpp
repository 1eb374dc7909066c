// What a server refuses, and what is told of it.

#include "archive/tables/server/faults.h"

#include <doctest/doctest.h>

namespace faults_test {

using namespace thawslip::archive;
using Kind = ArchiveFault::Kind;

TEST_CASE("each answer of a server is told for what it is, and what helps then") {
    // PostgreSQL 15, Appendix A, "PostgreSQL Error Codes": the code, and its condition's name.
    const std::string away = "the server of the archive store/cold cannot be reached: why";
    const std::string busy = "another program is writing the archive store/cold; nothing was "
                             "changed, try again in a moment";
    const std::string failed = "the archive store/cold failed: why";
    const struct {
        const char* state;
        Kind kind;
        std::string said;
    } rows[] = {
        {"", Kind::Away, away},      // libpq's own
        {"08006", Kind::Away, away}, // connection_failure
        {"57P01", Kind::Away, away}, // admin_shutdown
        {"57P03", Kind::Away, away}, // cannot_connect_now
        {"53300", Kind::Away, away}, // too_many_connections
        {"55P03", Kind::Busy, busy}, // lock_not_available
        {"40P01", Kind::Busy, busy}, // deadlock_detected
        {"40001", Kind::Busy, busy}, // serialization_failure
        {"57014", Kind::Busy, busy}, // query_canceled
        {"53100", Kind::DiskFull, "no room left on the disk of the server store/cold"}, // disk_full
        {"58030", Kind::DiskFailed, "the disk of the server store/cold failed: why"},   // io_error
        {"XX001", Kind::Damaged, "the archive store/cold is damaged: why"}, // data_corrupted
        {"XX002", Kind::Damaged, "the archive store/cold is damaged: why"}, // index_corrupted
        {"42501", Kind::ReadOnly, // insufficient_privilege
         "the archive store/cold may not be written by you: why"},
        {"25006", Kind::ReadOnly, // read_only_sql_transaction
         "the archive store/cold may not be written by you: why"},
        {"28P01", Kind::CannotOpen, "cannot open the archive store/cold: why"}, // invalid_password
        {"3D000", Kind::CannotOpen, // invalid_catalog_name
         "cannot open the archive store/cold: why"},
        {"3F000", Kind::Missing, // invalid_schema_name
         "there is no archive at store/cold (why); who keeps the server makes one with what "
         "`thawslip archive sql` prints"},
        {"42P01", Kind::Missing, // undefined_table
         "there is no archive at store/cold (why); who keeps the server makes one with what "
         "`thawslip archive sql` prints"},
        {"42883", Kind::Missing, // undefined_function
         "there is no archive at store/cold (why); who keeps the server makes one with what "
         "`thawslip archive sql` prints"},
        {"22021", Kind::Failed, failed}, // character_not_in_repertoire
        {"23505", Kind::Failed, failed}, // unique_violation
        {"53200", Kind::Failed, failed}, // out_of_memory
        {"25P02", Kind::Failed, failed}, // in_failed_sql_transaction
        {"42601", Kind::Failed, failed}, // syntax_error
        {"XX000", Kind::Failed, failed}, // internal_error
        {"0A000", Kind::Failed, failed}, // feature_not_supported
    };
    for (const auto& row : rows) {
        CAPTURE(row.state);
        const auto fault = server_fault(row.state, "store/cold", "why");
        CHECK(fault.kind == row.kind);
        CHECK(fault.message == row.said);
    }
}

TEST_CASE("a server's words are told in one line, without its full stop") {
    CHECK(away("store/cold", "no route\n\tto the host.\n").message ==
          "the server of the archive store/cold cannot be reached: no route to the host");
    CHECK(away("store/cold", "").message ==
          "the server of the archive store/cold cannot be reached: ");
    CHECK(server_fault("23505", "store/cold", "twice. ").message ==
          "the archive store/cold failed: twice");
}

TEST_CASE("a server that answered and refused is no server that is away") {
    // As libpq 15 says them (fe-connect.c, fe-auth.c, fe-secure-openssl.c; from memory).
    for (const char* refused :
         {"FATAL:  role \"anna\" does not exist", "fe_sendauth: no password supplied",
          "root certificate file \"/root.crt\" does not exist",
          "server does not support SSL, but SSL was required"}) {
        CAPTURE(refused);
        const auto fault = connection_fault("store/cold", refused);
        CHECK(fault.kind == Kind::CannotOpen);
        CHECK(fault.message == std::string{"cannot open the archive store/cold: "} + refused);
    }
    for (const char* gone : {"connection to server at \"store\" failed: Connection refused",
                             "could not translate host name \"store\" to address",
                             "FATAL:  the database system is starting up",
                             "FATAL:  sorry, too many clients already"}) {
        CAPTURE(gone);
        CHECK(connection_fault("store/cold", gone).kind == Kind::Away);
    }
}

} // namespace faults_test
