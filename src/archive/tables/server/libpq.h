#pragma once

#include "base/loaded_library.h"

#include <libpq-fe.h>

namespace thawslip::archive {

// Every function of libpq that is used here, for the table below and for filling it.
// clang-format off
#define THAWSLIP_PQ_FUNCTIONS(X) \
    X(PQclear) X(PQcmdStatus) X(PQconnectPoll) X(PQconnectStartParams) X(PQconninfoFree) \
    X(PQconninfoParse) X(PQconsumeInput) X(PQenterPipelineMode) X(PQerrorMessage) X(PQfinish) \
    X(PQflush) X(PQfreemem) X(PQftype) X(PQgetResult) X(PQgetisnull) X(PQgetlength) \
    X(PQgetvalue) X(PQisBusy) X(PQnfields) X(PQnotifies) X(PQntuples) X(PQpipelineSync) \
    X(PQresultErrorField) X(PQresultStatus) X(PQsendPrepare) X(PQsendQueryPrepared) X(PQsetNoticeProcessor) \
    X(PQsetnonblocking) X(PQsocket) X(PQstatus)
// clang-format on

/// The functions of libpq, by their own names. The library is loaded when an archive on a server is
/// opened and not with the program: it brings some thirty further libraries, and most kitchens have
/// a file.
struct LibPq {
    THAWSLIP_PQ_FUNCTIONS(THAWSLIP_MEMBER)
};

/// Loaded at the first call, for good. \returns nullptr where this system has no libpq that knows
/// pipelines (PostgreSQL 14)
const LibPq* libpq();

} // namespace thawslip::archive
