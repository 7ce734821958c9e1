// SPDX-License-Identifier: MIT
#include "ui/recordings/recording_edits.h"

#include "ui/recordings/column_pane.h"
#include "ui/recordings/film_page.h"
#include "ui/recordings/name_files.h"
#include "ui/recordings/recording_list.h"
#include "ui/recordings/recording_page.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/sensor_pane.h"
#include "ui/widgets/labels.h"

#include <QFileDialog>
#include <QFileInfo>

#include <cstddef>
#include <vector>

namespace stillbay::ui {

RecordingEdits::RecordingEdits(Document& document, const RecordingPages& pages, QWidget* parent)
    : QObject(parent), m_document(document), m_pages(pages), m_window(parent)
{
    connect(&m_pages.list, &RecordingList::addWanted, this, &RecordingEdits::ask);
    connect(&m_pages.list, &RecordingList::removeWanted, this, &RecordingEdits::remove);
    connect(&m_pages.list, &RecordingList::kindWanted, this,
            [this](std::size_t, RecordingKind kind) {
                change(tr("change what a recording is taken for"),
                       [kind](NamedRecording& named) { named.kind = kind; });
            });
    connectPages();
}

void RecordingEdits::connectPages()
{
    connect(&m_pages.page.columns(), &ColumnPane::changed, this,
            [this](const std::vector<ReadColumn>& columnsWanted, std::optional<double> rate_hz) {
                change(tr("change how a recording is read"), [&](NamedRecording& named) {
                    named.columns = columnsWanted;
                    named.rate_hz = rate_hz;
                });
            });
    connect(&m_pages.page.sensor(), &SensorPane::changed, this,
            [this](const NamedRecording& sensor) {
                change(tr("say where the sensor sat"), [&](NamedRecording& named) {
                    named.sensor_mm = sensor.sensor_mm;
                    named.sensor_mass_g = sensor.sensor_mass_g;
                    named.sensor_axes = sensor.sensor_axes;
                    named.arm = sensor.arm;
                });
            });
    connect(&m_pages.page, &RecordingPage::partWanted, this, &RecordingEdits::takePart);
    connect(&m_pages.film, &FilmPage::partWanted, this, &RecordingEdits::takePart);
    connect(&m_pages.film, &FilmPage::throttleWanted, this, [this](std::optional<double> throttle) {
        change(tr("say at which throttle was filmed"),
               [throttle](NamedRecording& named) { named.throttle = throttle; });
    });
}

const NamedRecording* RecordingEdits::shown() const
{
    const Chosen chosen = m_pages.list.chosen();
    const auto& recordings = m_document.setup().recordings;
    return chosen.what == Chosen::What::Recording && chosen.index < recordings.size()
               ? &recordings[chosen.index]
               : nullptr;
}

void RecordingEdits::ask()
{
    const QString folder =
        m_document.path().isEmpty() ? QString() : QFileInfo(m_document.path()).absolutePath();
    const QStringList paths =
        QFileDialog::getOpenFileNames(m_window, tr("Add recordings"), folder, recordingFilter());
    if (!paths.isEmpty())
        add(paths);
}

void RecordingEdits::add(const QStringList& paths,
                         const std::function<void(NamedRecording&)>& describe)
{
    const auto last = nameFiles(m_document, paths, describe);
    const bool isTaken = m_pages.list.problem().display(
        last ? Result<void>() : Result<void>(tl::unexpected<Error>(last.error())));
    if (isTaken && *last)
        m_pages.list.choose({Chosen::What::Recording, **last});
}

// A recording that was moved gets its new place.
void RecordingEdits::find(const QString& file)
{
    const QString path =
        QFileDialog::getOpenFileName(m_window, tr("Where is %1?").arg(file), {}, recordingFilter());
    if (path.isEmpty() || !shown())
        return;
    const std::string old = shown()->file, place = namedPlace(path);
    m_pages.list.problem().display(
        m_document.edit(tr("name the recording's new place"), {}, [&](Setup& setup) {
            for (NamedRecording& named : setup.recordings)  // a film may stand there part by part
                if (named.file == old)
                    named.file = place;
        }));
}

void RecordingEdits::remove(std::size_t place)
{
    const auto at = static_cast<std::ptrdiff_t>(place);
    m_pages.list.problem().display(m_document.edit(
        tr("remove a recording"), {},
        [at](Setup& setup) { setup.recordings.erase(setup.recordings.begin() + at); }));
}

void RecordingEdits::takePart(std::optional<double> from_s, std::optional<double> to_s)
{
    change(tr("choose a part of a recording"), [&](NamedRecording& named) {
        named.from_s = from_s;
        named.to_s = to_s;
    });
}

void RecordingEdits::change(const QString& text, const std::function<void(NamedRecording&)>& how)
{
    const Chosen chosen = m_pages.list.chosen();
    if (!shown())
        return;
    m_pages.list.problem().display(
        m_document.edit(text, {}, [&](Setup& setup) { how(setup.recordings[chosen.index]); }));
}

}  // namespace stillbay::ui
