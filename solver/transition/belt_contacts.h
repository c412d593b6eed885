#pragma once

#include "mesh/idler_set.h"
#include "mesh/patch.h"
#include "solver/contact/contact_energy.h"
#include "solver/transition_case.h"

#include <memory>
#include <string>
#include <vector>

namespace swale {

enum class RollPlace { pulley, centre, wing };

/// A roll that the modelled part of the belt may touch.
struct BeltContact {
    std::string name;    ///< "pulley", "set 1 centre", "set 1 wing +y"
    std::string mirror;  ///< name of its mirror image where half is modelled, else empty
    RollPlace place = RollPlace::centre;
    double x = 0;  ///< in space [mm]
    std::shared_ptr<const ContactEnergy> energy;
};

/// Contacts with pulley, stations and `sets` full sets; the patch is over the unstretched belt, `scale` times as long. They are
/// looked for as far along the belt as the state's tension lets it hang through.
std::vector<BeltContact> belt_contacts(const TransitionCase& transition, const TensionState& state, const Patch& patch,
                                       double scale, int sets);

/// Contacts with the rolls of one set.
std::vector<BeltContact> set_contacts(const TransitionCase& transition, const TensionState& state, const Patch& patch,
                                      double scale, const IdlerSet& set);

}  // namespace swale
