#pragma once

namespace swale::verification {

/// Where a value comes from; an own regression is never evidence and has no place here.
enum class Kind {
    closed_form,   ///< of the law that the shell itself has, computed in the check
    other_method,  ///< own computation by another method than the one under test
    published_table,
};

/// A value to be met, with all that a reader needs to judge the agreement.
struct Reference {
    double value;
    const char* unit;
    const char* source;
    Kind kind;
    const char* conditions;
    double tolerance;  ///< relative
    const char* why;   ///< this tolerance
};

/// A doctest check that `measured` is within the tolerance of the reference; a failure prints all of it.
void check(const Reference& reference, double measured);

}  // namespace swale::verification
