#include "tests/verification/reference.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

namespace swale::verification {

void check(const Reference& reference, double measured) {
    const double off = measured / reference.value - 1;
    const std::string unit = reference.unit, source = reference.source, conditions = reference.conditions, why = reference.why;
    CHECK_MESSAGE(std::abs(off) <= reference.tolerance, "measured ", measured, " ", unit, ", reference ", reference.value,
                  ", off by ", off, "; ", source, "; ", conditions, "; tolerance ", reference.tolerance, ": ", why);
}

}  // namespace swale::verification
