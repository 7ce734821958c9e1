// SPDX-License-Identifier: MIT
#include "ui/craft/plate_dialog.h"

#include "core/base/units.h"
#include "ui/craft/preset_entries.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/plain_number.h"

#include <QComboBox>
#include <QLineEdit>

#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kMostCutOut_percent = 95.0;
constexpr double kThinnest_mm = 0.1, kLongest_mm = 2000.0;
const char* const kUsualMaterial = "Carbon plate, woven";

}  // namespace

PlateDialog::PlateDialog(Document& document, PartList list, QWidget* parent)
    : HelperDialog(document, tr("Add a plate"),
                   tr("The outline, the thickness and the material tell what a plate weighs."),
                   parent),
      m_list(list),
      m_name(new QLineEdit(tr("plate"), this)),
      m_material(new QComboBox(this)),
      m_length(nullptr),
      m_width(nullptr),
      m_thickness(nullptr),
      m_cutOut(nullptr)
{
    m_name->setAccessibleName(tr("Name"));
    m_name->setToolTip(tr("What you call this plate."));
    addRow(tr("Name"), m_name);
    for (const ArmPreset& preset : armPresets()) {
        m_material->addItem(displayText(nameOf(preset)));
        if (std::string_view(preset.name) == kUsualMaterial)
            m_material->setCurrentIndex(m_material->count() - 1);
    }
    m_material->setAccessibleName(tr("Material"));
    m_material->setToolTip(tr("Its density is a typical one."));
    addRow(tr("Material"), m_material);
    m_length = addSide(tr("Length"), tr("Of the outline, fore and aft."), 160.0, 1.0);
    m_width = addSide(tr("Width"), tr("Of the outline, across."), 120.0, 1.0);
    m_thickness = addSide(tr("Thickness"), tr("By calliper."), 2.0, 0.5);
    m_cutOut = addNumber({tr("Cut out"), tr("%"),
                          tr("How much of the outline holes, slots and rounded corners take."), 0.0,
                          kMostCutOut_percent, 5.0});
    m_cutOut->show(0.0);
    addNote(
        tr("The plate starts in the middle of the parts that are there; move it afterwards. "
           "Its mass counts as estimated until you type the one from the scale."));
    for (NumberBox* box : {m_length, m_width, m_thickness, m_cutOut})
        connect(box, &NumberBox::valueChanged, this, &PlateDialog::recompute);
    connect(m_material, &QComboBox::currentIndexChanged, this, &PlateDialog::recompute);
    recompute();
}

NumberBox* PlateDialog::addSide(const QString& label, const QString& meaning, double usual_mm,
                                double step)
{
    NumberBox* const box = addNumber({label, tr("mm"), meaning, kThinnest_mm, kLongest_mm, step});
    box->show(usual_mm);
    return box;
}

const ArmPreset& PlateDialog::material() const
{
    return armPresets()[static_cast<std::size_t>(m_material->currentIndex())];
}

// Its mass to a tenth of a gram, as far as the density is known.
Result<Part> PlateDialog::plate() const
{
    Setup at = setup();
    Plate plate{.length_mm = m_length->value(),
                .width_mm = m_width->value(),
                .thickness_mm = m_thickness->value(),
                .cut_out_share = m_cutOut->value() / kPercent,
                .centre_mm = middleOf(partsOf(at, m_list)),
                .name = m_name->text().toStdString()};
    Result<Part> part = platePart(plate, material());
    if (part && part->mass_g > 1.0)
        part->mass_g = std::round(10.0 * part->mass_g) / 10.0;
    return part;
}

void PlateDialog::recompute()
{
    const Result<Part> part = plate();
    setOutcome(
        {part ? tr("Mass: %1 g.").arg(plainNumber(part->mass_g, 4)) : QString(),
         tr("Density of %1: %2 kg/m³. From: %3.")
             .arg(displayText(nameOf(material())), plainNumber(material().density_kg_m3.value, 4),
                  displayText(material().source))});
    setProblem(part ? QString() : displayText(part.error().what) + u'.');
}

Result<void> PlateDialog::apply()
{
    const Result<Part> part = plate();
    if (!part)
        return tl::unexpected<Error>(part.error());
    return document().edit(tr("add a plate"), {}, [&](Setup& setup) {
        setup = withPlate(std::move(setup), m_list, *part, material());
    });
}

}  // namespace stillbay::ui
