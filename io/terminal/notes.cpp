#include "io/terminal/notes.h"

#include <algorithm>

namespace swale {

std::vector<StateNote> state_notes(const TransitionResult& result) {
    std::vector<StateNote> notes;
    for (const StateResult& state : result.states)
        for (const std::string& sentence : state.notes)
            if (std::ranges::find(notes, sentence, &StateNote::sentence) == notes.end())
                notes.push_back({state.name, sentence});
    return notes;
}

}  // namespace swale
