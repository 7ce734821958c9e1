// SPDX-License-Identifier: MIT
#include "ui/recordings/without_recording.h"

#include "core/calibrate/flight_notes.h"
#include "core/calibrate/hang.h"
#include "ui/recordings/flight_notes_pane.h"
#include "ui/recordings/hang_pane.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/said_pane.h"
#include "ui/widgets/display_text.h"

#include <QStringList>

#include <vector>

namespace stillbay::ui {

void sayHang(SaidPane& said, const HangPane& hang, const Setup& craft)
{
    const std::vector<HungMass> masses = hang.masses();
    if (masses.empty())
        return said.say(
            SaidPane::tr("Fill in one row or more: the tube's Young's modulus follows."));
    const Result<Correction> correction = hangTest(craft, masses, hang.readings());
    if (!correction)
        return said.say(SaidPane::tr("No answer: %1.").arg(reasonText(correction.error())));
    said.display(SaidPane::tr("So stiff is the tube by the masses hung on it."), correction->mark,
                 *correction, {});
}

void showAndSayNotes(SaidPane& said, FlightNotesPane& pane, const PredictedCraft& craft)
{
    const std::vector<FlightNote>& notes = craft.setup.flight.notes;
    pane.setNotes(notes);
    if (notes.empty())
        return said.say(
            SaidPane::tr("Notes say where the prediction and what the films show differ."));
    if (!craft.prediction || !craft.isCurrent)
        return said.setStale(true);  // it is on the way
    const FlightNotesCheck check = checkFlightNotes(craft.setup, craft.prediction->curve);
    QStringList each;
    for (const NoteCheck& note : check.notes)
        each << displayText(noteText(note));
    said.display(displayText(flightNotesText(check)),
                 check.correction ? std::optional(check.correction->mark) : std::nullopt,
                 check.correction, each);
}

}  // namespace stillbay::ui
