#include "io/unit_library.h"

#include "io/file_error.h"

#include <udunits2.h>
#include <array>
#include <memory>
#include <mutex>
#include <set>
#include <stdexcept>
#include <utility>

namespace swale {
namespace {

using Unit = std::unique_ptr<ut_unit, decltype(&ut_free)>;
using Converter = std::unique_ptr<cv_converter, decltype(&cv_free)>;
using System = std::unique_ptr<ut_system, decltype(&ut_free_system)>;

// UDUNITS keeps its parser and its last status in globals.
std::mutex library;

System load() {
    ut_set_error_message_handler(ut_ignore);
    System system(ut_read_xml(nullptr), ut_free_system);
    if (!system) throw FileError("udunits2.xml", "the database of the unit library UDUNITS-2 can't be read");
    return system;
}

Unit parse(const std::string& text) {
    static const System system = load();
    return {ut_parse(system.get(), text.c_str(), UT_ASCII), ut_free};
}

}  // namespace

Measure measure_of(const std::string& symbol) {
    static const std::set<std::string> angles = {"degree", "degrees", "rad", "radian", "radians", "mrad"};
    static const std::set<std::string> ratios = {"%", "percent"};
    static const std::array<std::pair<const char*, Measure>, 4> references = {
        {{"mm", Measure::length}, {"N", Measure::force}, {"kg", Measure::mass}, {"Pa", Measure::pressure}}};
    if (angles.contains(symbol)) return Measure::angle;
    if (ratios.contains(symbol)) return Measure::ratio;
    const std::lock_guard lock(library);
    const Unit unit = parse(symbol);
    if (!unit) return Measure::unknown;
    for (const auto& [reference, measure] : references)
        if (ut_are_convertible(unit.get(), parse(reference).get())) return measure;
    return Measure::other;
}

double convert(double value, const std::string& from, const std::string& to) {
    const std::lock_guard lock(library);
    const Unit source = parse(from);
    const Unit target = parse(to);
    const Converter converter(source && target ? ut_get_converter(source.get(), target.get()) : nullptr, cv_free);
    if (!converter) throw std::logic_error("no conversion from " + from + " to " + to);
    return cv_convert_double(converter.get(), value);
}

}  // namespace swale
