#pragma once

#include <string>
#include <vector>

namespace swale::benchmark {

/// What became of one state of one case: a line of the campaign's csv file.
struct Record {
    int index = 0;
    std::string state;
    std::string outcome;                         ///< "clean", "warned", "not converged", "faulty", "exception"
    std::vector<std::string> kinds;              ///< of its warnings, its faults, or its lack of convergence
    std::string reason;                          ///< the solver's own sentences
    double along = 0, across = 0, vertical = 0;  ///< imbalance over tension plus weight
    double axial = 0;                            ///< share of a roll's force along its axis
    double per_width = 0;                        ///< tension [N/mm]
    double sag = 0;                              ///< of the longest free span, over the span
    double edge_strain = 0, edge_error = 0, edge_far_error = 0;
    double edge_x = 0;       ///< where the edge strain is largest, over the distance
    double tension_min = 0;  ///< [N/mm]
    double eigenvalue_symmetric = 0, eigenvalue_antisymmetric = 0;
    int sets = 0, unknowns = 0, iterations = 0;
    double seconds = 0;  ///< of the whole case
    std::string line;    ///< the case
};

std::string csv_header();
std::string csv_line(const Record& record);

/// Records of a csv file in the order of their index; none if there is no file. A line cut short is left out.
std::vector<Record> read_records(const std::string& file);

}  // namespace swale::benchmark
