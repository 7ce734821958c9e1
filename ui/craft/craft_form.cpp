// SPDX-License-Identifier: MIT
#include "ui/craft/craft_form.h"

#include "core/base/units.h"
#include "core/setup/fields.h"
#include "core/setup/mount_layout.h"
#include "ui/craft/craft_summaries.h"
#include "ui/craft/helper_buttons.h"
#include "ui/craft/quick_layouts.h"
#include "ui/craft/row_list.h"
#include "ui/widgets/bind_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/section.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QVBoxLayout>
#include <QWheelEvent>

#include <cmath>
#include <string_view>
#include <type_traits>
#include <utility>

namespace stillbay::ui {
namespace {

// What it means to leave an optional number out, and where it starts when it is given.
struct LeftOut {
    std::string_view key;
    const char* word;
    double start;
};

constexpr LeftOut kLeftOut[] = {
    {"wall_mm", QT_TRANSLATE_NOOP("stillbay::ui::CraftForm", "solid"), 1.0},
    {"root_stiffness_nm_per_rad", QT_TRANSLATE_NOOP("stillbay::ui::CraftForm", "rigid"), 500.0},
    {"thrust_coefficient", QT_TRANSLATE_NOOP("stillbay::ui::CraftForm", "estimated"), 0.1},
    {"power_coefficient", QT_TRANSLATE_NOOP("stillbay::ui::CraftForm", "estimated"), 0.05},
    {"youngs_modulus_mpa", QT_TRANSLATE_NOOP("stillbay::ui::CraftForm", "from hardness"), 3.0},
};

template <class Owner, class Find>
Place<Owner> placeOf(const QString& path, const QString& spoken, Find find)
{
    return {path, spoken, find};
}

// The row of a list, by index, while it exists.
template <class Owner, class List>
Place<Owner> rowPlace(const QString& path, const QString& thing, std::size_t index, List list)
{
    return {QStringLiteral("%1[%2]").arg(path).arg(index),
            QStringLiteral("%1 %2").arg(thing).arg(index + 1),
            [list, index](const Setup& setup) -> const Owner* {
                const std::vector<Owner>& rows = list(const_cast<Setup&>(setup));
                return index < rows.size() ? &rows[index] : nullptr;
            }};
}

// Whether a row shows the field: a mount point has either angles or a hole.
template <class Owner>
bool fits(const Field<Owner>& field, const Setup& setup)
{
    if constexpr (std::is_same_v<Owner, MountPoint>) {
        const std::string_view key = field.key;
        const bool isHole = key == "anchor_mm";
        const bool isAngle = key == "azimuth_deg" || key == "elevation_deg";
        return setup.mounts.drilled() ? !isAngle : !isHole;
    } else {
        return true;
    }
}

// The next arm stands as far round as the last two stand apart.
void addArm(Setup& setup)
{
    std::vector<Arm>& arms = setup.airframe.arms;
    Arm arm = arms.empty() ? Arm{} : arms.back();
    const double pace =
        arms.size() > 1 ? arm.azimuth_deg - arms[arms.size() - 2].azimuth_deg : 90.0;
    arm.azimuth_deg = std::remainder(arm.azimuth_deg + pace, 360.0);
    arm.extras.clear();
    arms.push_back(arm);
}

// The next tube is the last one's mirror image across the craft's middle.
void addPoint(Setup& setup)
{
    std::vector<MountPoint>& points = setup.mounts.points;
    MountPoint point = points.empty() ? MountPoint{} : points.back();
    point.bay_mm[1] = -point.bay_mm[1];
    point.azimuth_deg = -point.azimuth_deg;
    if (point.anchor_mm)
        (*point.anchor_mm)[1] = -(*point.anchor_mm)[1];
    point.extras.clear();
    points.push_back(point);
}

// A choice that scrolling past does not change.
class Choice final : public QComboBox {
public:
    Choice(const QString& name, const QStringList& items)
    {
        addItems(items);
        setAccessibleName(name);
        setFocusPolicy(Qt::StrongFocus);
        setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    }

protected:
    void wheelEvent(QWheelEvent* event) override
    {
        if (hasFocus())
            QComboBox::wheelEvent(event);
        else
            event->ignore();
    }
};

template <class T>
void removeRow(std::vector<T>& rows, std::size_t index)
{
    rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(index));
}

template <class T>
void swapRows(std::vector<T>& rows, std::size_t a, std::size_t b)
{
    std::swap(rows.at(a), rows.at(b));
}

}  // namespace

CraftForm::CraftForm(Document& document, QWidget* parent)
    : QScrollArea(parent), m_document(document)
{
    auto* const page = new QWidget;
    m_layout = new QVBoxLayout(page);
    m_layout->setContentsMargins(4, 4, 4, 4);
    m_layout->setSpacing(2);
    addCraft();
    addAirframe();
    addDrive();
    addBay();
    addCamera();
    addTube();
    addMounts();
    addFlight();
    m_layout->addStretch();
    m_sections[QStringLiteral("tube")]->setOpen(true);  // what a shop visit changes first
    for (auto section = m_sections.cbegin(); section != m_sections.cend(); ++section)
        section.value()->rememberAs(section.key());

    setWidget(page);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFrameShape(QFrame::NoFrame);
    setAccessibleName(tr("Craft"));
    connect(&m_document, &Document::setupChanged, this, &CraftForm::summarise);
    summarise();
}

Section* CraftForm::addSection(const QString& title)
{
    auto* const section = new Section(title);
    m_layout->addWidget(section);
    return section;
}

template <class Owner>
FieldRow* CraftForm::row(const Field<Owner>& field, const Place<Owner>& place)
{
    QString word;
    double start = 0.0;
    for (const LeftOut& leftOut : kLeftOut) {
        if (leftOut.key == field.key) {
            word = tr(leftOut.word);
            start = leftOut.start;
        }
    }
    return bindField(m_document, field, place, word, start);
}

template <class Owner>
void CraftForm::addFields(Section& section, const Place<Owner>& place)
{
    for (const Field<Owner>& field : fieldsOf<Owner>()) {
        FieldRow* const made = row(field, place);
        section.add(made);
        if (made->spec().optional)
            m_estimated[made->spec().path] = made;
    }
    m_sections[place.path] = &section;
}

template <class Owner>
QWidget* CraftForm::fieldsCard(const Place<Owner>& place)
{
    auto* const card = new QWidget;
    auto* const layout = new QVBoxLayout(card);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(4);
    for (const Field<Owner>& field : fieldsOf<Owner>())
        if (fits(field, m_document.setup()))
            layout->addWidget(row(field, place));
    return card;
}

void CraftForm::addCraft()
{
    Section* const section = addSection(tr("Craft"));
    const auto labelled = [section](const QString& title, QWidget* editor) {
        auto* const label = new QLabel(title);
        label->setBuddy(editor);
        section->add(label);
        section->add(editor);
    };
    auto* const name = new QLineEdit;
    name->setToolTip(tr("What you call this craft."));
    labelled(tr("Name"), new TextRow(m_document,
                                     {QStringLiteral("name"), tr("Craft: name"),
                                      [](const Setup& setup) {
                                          return &setup.name;
                                      }},
                                     name));
    auto* const notes = new QPlainTextEdit;
    notes->setToolTip(tr("Whatever you want to remember of this craft; kept in its file."));
    notes->setFixedHeight(5 * notes->fontMetrics().lineSpacing() + 12);
    labelled(tr("Notes"), new TextRow(m_document,
                                      {QStringLiteral("notes"), tr("Craft: notes"),
                                       [](const Setup& setup) {
                                           return &setup.notes;
                                       }},
                                      notes));
    m_sections[QStringLiteral("name")] = section;
}

void CraftForm::addAirframe()
{
    Section* const hub = addSection(tr("Airframe"));
    hub->add(partList(tr("airframe part"), QStringLiteral("airframe.parts"),
                      [](Setup& setup) -> std::vector<Part>& { return setup.airframe.parts; }));
    m_sections[QStringLiteral("airframe.parts")] = hub;
    Section* const arms = addSection(tr("Arms"));
    addFields(*arms, placeOf<ArmSection>(QStringLiteral("airframe.arm"), tr("Arms"),
                                         [](const Setup& setup) { return &setup.airframe.arm; }));
    arms->add(armList());
    m_sections[QStringLiteral("airframe.arms")] = arms;
}

void CraftForm::addDrive()
{
    addFields(*addSection(tr("Motors")),
              placeOf<Motor>(QStringLiteral("drive.motor"), tr("Motors"),
                             [](const Setup& setup) { return &setup.drive.motor; }));
    addFields(*addSection(tr("Propellers")),
              placeOf<Propeller>(QStringLiteral("drive.propeller"), tr("Propellers"),
                                 [](const Setup& setup) { return &setup.drive.propeller; }));
    addFields(*addSection(tr("Battery")),
              placeOf<Battery>(QStringLiteral("drive.battery"), tr("Battery"),
                               [](const Setup& setup) { return &setup.drive.battery; }));
    Section* const vibrations = addSection(tr("What shakes"));
    addFields(*vibrations, placeOf<Drive>(QStringLiteral("drive"), tr("Drive"),
                                          [](const Setup& setup) { return &setup.drive; }));
    m_balance = new BalanceButton(m_document);
    vibrations->add(m_balance, Qt::AlignLeft);
}

void CraftForm::addBay()
{
    Section* const section = addSection(tr("Bay"));
    addFields(*section, placeOf<Bay>(QStringLiteral("bay"), tr("Bay"),
                                     [](const Setup& setup) { return &setup.bay; }));
    section->add(partList(tr("bay part"), QStringLiteral("bay.parts"),
                          [](Setup& setup) -> std::vector<Part>& { return setup.bay.parts; }));
}

void CraftForm::addCamera()
{
    Section* const section = addSection(tr("Camera"));
    addFields(*section, placeOf<Camera>(QStringLiteral("camera"), tr("Camera"),
                                        [](const Setup& setup) { return &setup.camera; }));
    section->add(new ExposureButton(m_document), Qt::AlignLeft);
}

void CraftForm::addTube()
{
    addFields(*addSection(tr("Tube")),
              placeOf<TubeKind>(QStringLiteral("tube"), tr("Tube"),
                                [](const Setup& setup) { return &setup.tube; }));
}

void CraftForm::addMounts()
{
    Section* const section = addSection(tr("Mounts"));
    addFields(*section, placeOf<Mounts>(QStringLiteral("mounts"), tr("Mounts"),
                                        [](const Setup& setup) { return &setup.mounts; }));
    section->add(endsChoice());
    section->add(anchorChoice());
    section->add(pointList());
}

void CraftForm::addFlight()
{
    addFields(*addSection(tr("Flight")),
              placeOf<Flight>(QStringLiteral("flight"), tr("Flight"),
                              [](const Setup& setup) { return &setup.flight; }));
    addFields(*addSection(tr("Limits")),
              placeOf<Limits>(QStringLiteral("limits"), tr("Limits"),
                              [](const Setup& setup) { return &setup.limits; }));
}

QWidget* CraftForm::partList(const QString& thing, const QString& path,
                             std::vector<Part>& (*listOf)(Setup&))
{
    RowListSpec spec;
    spec.thing = thing;
    spec.count = [listOf](const Setup& setup) {
        return listOf(const_cast<Setup&>(setup)).size();
    };
    spec.makeRow = [this, thing, path, listOf](std::size_t index) {
        const Place<Part> part = rowPlace<Part>(path, thing, index, listOf);
        QWidget* const card = fieldsCard(part);
        auto* const name = new QLineEdit;
        name->setToolTip(tr("What you call this part."));
        auto* const named =
            new TextRow(m_document,
                        {part.path + QStringLiteral(".name"), tr("%1: name").arg(part.spoken),
                         [find = part.find](const Setup& setup) {
                             const Part* owner = find(setup);
                             return owner ? &owner->name : nullptr;
                         }},
                        name);
        static_cast<QVBoxLayout*>(card->layout())->insertWidget(0, named);
        return card;
    };
    spec.add = [listOf](Setup& setup) {
        Part part;
        part.name = tr("new part").toStdString();
        listOf(setup).push_back(std::move(part));
    };
    spec.remove = [listOf](Setup& setup, std::size_t index) {
        removeRow(listOf(setup), index);
    };
    spec.swap = [listOf](Setup& setup, std::size_t a, std::size_t b) {
        swapRows(listOf(setup), a, b);
    };
    return new RowList(m_document, std::move(spec));
}

QWidget* CraftForm::armList()
{
    RowListSpec spec;
    spec.thing = tr("arm");
    spec.count = [](const Setup& setup) {
        return setup.airframe.arms.size();
    };
    spec.makeRow = [this](std::size_t index) {
        return fieldsCard(
            rowPlace<Arm>(QStringLiteral("airframe.arms"), tr("arm"), index,
                          [](Setup& setup) -> std::vector<Arm>& { return setup.airframe.arms; }));
    };
    spec.add = addArm;
    spec.remove = [](Setup& setup, std::size_t index) {
        removeRow(setup.airframe.arms, index);
    };
    spec.swap = [](Setup& setup, std::size_t a, std::size_t b) {
        swapRows(setup.airframe.arms, a, b);
    };
    spec.layouts = armLayouts();
    return new RowList(m_document, std::move(spec));
}

QWidget* CraftForm::pointList()
{
    RowListSpec spec;
    spec.thing = tr("tube");
    spec.count = [](const Setup& setup) {
        return setup.mounts.points.size();
    };
    spec.makeRow = [this](std::size_t index) {
        return fieldsCard(rowPlace<MountPoint>(
            QStringLiteral("mounts.points"), tr("tube"), index,
            [](Setup& setup) -> std::vector<MountPoint>& { return setup.mounts.points; }));
    };
    spec.add = addPoint;
    spec.remove = [](Setup& setup, std::size_t index) {
        removeRow(setup.mounts.points, index);
    };
    spec.swap = [](Setup& setup, std::size_t a, std::size_t b) {
        swapRows(setup.mounts.points, a, b);
    };
    spec.layouts = tubeLayouts();
    spec.kind = [](const Setup& setup) {
        return setup.mounts.drilled() ? 1 : 0;
    };
    return new RowList(m_document, std::move(spec));
}

QWidget* CraftForm::choice(const ChoiceSpec& spec)
{
    auto* const box = new Choice(spec.name, spec.items);
    box->setToolTip(spec.meaning);
    auto* const refusal = new ProblemLabel;
    const auto show = [this, box, current = spec.current] {
        box->setCurrentIndex(current(m_document.setup()));
    };
    show();
    connect(&m_document, &Document::setupChanged, box, [show, refusal] {
        refusal->format({});
        show();
    });
    connect(box, &QComboBox::activated, this, [this, show, refusal, spec](int index) {
        refusal->display(m_document.edit(spec.undoText(index), {}, [&](Setup& setup) {
            if (spec.current(setup) != index)
                spec.choose(setup, index);
        }));
        show();
    });
    auto* const whole = new QWidget;
    auto* const layout = new QVBoxLayout(whole);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(box);
    layout->addWidget(refusal);
    return whole;
}

QWidget* CraftForm::endsChoice()
{
    return choice(
        {.name = tr("Mounts: how the tube ends are held"),
         .meaning = tr("<p>Clamped ends sit tight in a collar or over a peg and cannot turn; "
                       "hinged ends hang on a ring or a pin and turn freely.</p>"),
         .items = {tr("Ends clamped, held square"), tr("Ends hinged, free to turn")},
         .current = [](const Setup& setup) { return setup.mounts.ends == Ends::Clamped ? 0 : 1; },
         .undoText = [](int) { return tr("change how the ends are held"); },
         .choose =
             [](Setup& setup, int index) {
                 setup.mounts.ends = index == 0 ? Ends::Clamped : Ends::Hinged;
             }});
}

QWidget* CraftForm::anchorChoice()
{
    return choice(
        {.name = tr("Mounts: planned or drilled"),
         .meaning = tr("<p>While planning, the anchor lies along the angles at free length × "
                       "stretch. Once drilled, the holes stay and decide each tube's "
                       "stretch.</p>"),
         .items = {tr("Planned: anchors follow the angles"), tr("Drilled: the holes stay")},
         .current = [](const Setup& setup) { return setup.mounts.drilled() ? 1 : 0; },
         .undoText =
             [](int index) { return index == 1 ? tr("drill the holes") : tr("plan by angles"); },
         .choose =
             [](Setup& setup, int index) {
                 setup.mounts = index == 1 ? drilled(setup.mounts) : planned(setup.mounts);
             }});
}

void CraftForm::setAssessment(const Assessment& assessment)
{
    const auto estimate = [this](const char* path, double value) {
        if (FieldRow* const found = m_estimated.value(QLatin1String(path)))
            found->setEstimate(std::round(1e3 * value) / 1e3);
    };
    estimate("tube.youngs_modulus_mpa", assessment.tube.youngs_modulus / unit::mpa);
    estimate("drive.propeller.thrust_coefficient", assessment.propeller.thrust_coefficient);
    estimate("drive.propeller.power_coefficient", assessment.propeller.power_coefficient);
    m_balance->setAssessment(assessment);
}

void CraftForm::reveal(const QString& path)
{
    QString best;
    for (auto it = m_sections.cbegin(); it != m_sections.cend(); ++it)
        if (path.startsWith(it.key()) && it.key().size() > best.size())
            best = it.key();
    Section* const section = m_sections.value(best);
    if (!section)
        return;
    section->setOpen(true);
    ensureWidgetVisible(section);
}

void CraftForm::summarise()
{
    const Setup& setup = m_document.setup();
    for (const auto& [path, text] : craftSummaries(setup))
        m_sections[path]->setSummary(text);
    if (FieldRow* const row = m_estimated.value(QStringLiteral("mounts.stretch"))) {
        const double stretch = std::round(1e3 * drawnStretch(setup.mounts)) / 1e3;
        row->setEstimate(setup.mounts.drilled() ? std::optional(stretch) : std::nullopt);
    }
}

}  // namespace stillbay::ui
