// Reports from a ledger and the handed-in visits. Pure.
#pragma once

#include "strandline/salon/ended.h"
#include "strandline/salon/ledger.h"
#include "strandline/wire/stock_report.h"

namespace strandline::salon {

struct ReportAsked {
  std::string shelf, currency;
  int from = 0, until = 0;               // days since 1970-01-01, both included
  std::map<std::string, double> listed;  // price per gram as it stands in the shelf, for what nobody said was paid
  std::map<std::string, std::string> names, range_names;
};

wire::StockReport stock_report(const Ledger& ledger, const std::vector<EndedVisit>& visits, const ReportAsked& asked);

}  // namespace strandline::salon
