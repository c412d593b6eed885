#pragma once

#include <string>

/// Published belts: thickness and mass as printed.
struct PublishedBelt {
    std::string designation;
    double thickness;  ///< [mm]
    double mass;       ///< [kg/m^2]
    std::string source;
};

/// The belts from which skim and carcass density of EP belts are taken as a mean, so agreement shows the scatter, not the
/// truth.
inline const PublishedBelt published_ep_belts[] = {
    {"EP 630/4 5+2", 11.4, 14.73, "belt certificate filed with an environmental authority, 2020"},
    {"EP 200/2 2+1", 5.2, 6.8, "a belt maker's technical table, 2001"},
    {"EP 250/2 3+1", 6.6, 8.4, "a belt maker's technical table, 2001"},
    {"EP 315/2 3+1", 6.8, 8.6, "a belt maker's technical table, 2001"},
    {"EP 400/2 3+1", 7.3, 9.1, "a belt maker's technical table, 2001"},
    {"EP 630/2 5+1.5", 10.5, 13.4, "a belt maker's technical table, 2001"},
};

/// Carcass thickness of EP belts in another maker's web table, heavy duty: not used by the catalogue.
struct PublishedCarcass {
    int strength;  ///< [N/mm]
    int plies;
    double thickness;  ///< [mm]
};
inline const PublishedCarcass published_ep_carcasses[] = {{200, 2, 2.8}, {250, 2, 3.0}, {315, 2, 3.1}, {315, 3, 3.6},
                                                          {400, 2, 3.2}, {400, 3, 3.6}, {400, 4, 4.5}, {500, 3, 3.7},
                                                          {500, 4, 4.5}, {630, 3, 3.9}, {630, 4, 5.0}};

/// Steel-cord belts with equal covers, another maker's technical data page, Table 3: not used by the catalogue.
struct PublishedCordBelt {
    int strength;      ///< [N/mm]
    double cover;      ///< each side [mm]
    double thickness;  ///< [mm]
};
inline const PublishedCordBelt published_cord_belts[] = {{800, 5, 13.9},  {1000, 5, 14.1}, {1250, 5, 14.9}, {1600, 6, 17.6},
                                                         {2000, 6, 17.6}, {2500, 7, 20.6}, {3150, 7, 22.1}, {3500, 7, 22.6},
                                                         {4000, 8, 24.9}, {4500, 8, 25.7}, {5000, 10, 30.9}};

/// Troughability F/L (ISO 703) of a strip hung at its ends against q L^3/D, q weight per area: heavy elastica whose ends are
/// free to move in, own computation. The lowest F/L for a trough of 35 deg is 0.14, ISO 14890, from memory (sure).
struct Troughability {
    double sag_ratio;
    double load;
};
inline constexpr double lowest_sag_ratio_35_deg = 0.14;
inline const Troughability troughability_table[] = {{.08, 6.347},  {.10, 8.085},  {.12, 9.934},  {.14, 11.929}, {.16, 14.114},
                                                    {.18, 16.543}, {.20, 19.293}, {.23, 24.256}, {.26, 30.751}, {.30, 43.8}};
