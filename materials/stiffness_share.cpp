#include "materials/stiffness_share.h"

#include "materials/data_sheet.h"

#include <cmath>

namespace swale {
namespace {

void scale(BeltDatum& entry, double factor) {
    entry.value *= factor;
    if (!entry.range) return;
    entry.range->low *= factor;
    entry.range->high *= factor;
}

}  // namespace

void scale_stiffness(DataSheet& sheet, const std::string& name, double factor) {
    entry_of(sheet, name).value *= factor;
    if (name == "A22") scale(entry_of(sheet, "A12"), factor);
    if (name != "D11" && name != "D22") return;
    // As in Huber's D12 + 2 D66 = sqrt(D11 D22): Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, ch. 11.
    for (const char* share : {"D12", "D66"}) {
        scale(entry_of(sheet, share), std::sqrt(factor));
        entry_of(sheet, share).origin = {"derived", "its former share of sqrt(D11 D22)"};
    }
}

}  // namespace swale
