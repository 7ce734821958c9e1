// SPDX-License-Identifier: MIT
#include "ui/craft/preset_buttons.h"

#include "ui/craft/plate_dialog.h"
#include "ui/craft/preset_dialog.h"
#include "ui/document/own_presets.h"
#include "ui/widgets/flow_layout.h"
#include "ui/widgets/labels.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace stillbay::ui {
namespace {

struct KindText {
    QString choose;  // the dialog's title
    QString undoText;
};

KindText textOf(PresetKind kind)
{
    switch (kind) {
        case PresetKind::Arm:
            return {QObject::tr("Material of the arms"), QObject::tr("take a preset for the arms")};
        case PresetKind::Motor:
            return {QObject::tr("Class of motor"), QObject::tr("take a preset for the motors")};
        case PresetKind::Propeller:
            return {QObject::tr("Kind of propeller"),
                    QObject::tr("take a preset for the propellers")};
        case PresetKind::Pack:
            return {QObject::tr("Kind of battery"), QObject::tr("take a preset for the battery")};
        case PresetKind::Camera:
            return {QObject::tr("Kind of camera"), QObject::tr("take a preset for the camera")};
        case PresetKind::Tube:
            break;
    }
    return {QObject::tr("Tube as sold"), QObject::tr("take a preset for the tube")};
}

/// Asks for the name under which a section is kept.
class NameDialog final : public QDialog {
public:
    NameDialog(Document& document, PresetKind kind, std::vector<std::string> taken, QWidget* parent)
        : QDialog(parent),
          m_document(document),
          m_kind(kind),
          m_taken(std::move(taken)),
          m_name(new QLineEdit(this)),
          m_note(new QuietLabel({}, this)),
          m_problem(new ProblemLabel(this))
    {
        setWindowTitle(QObject::tr("Keep as preset"));
        m_name->setAccessibleName(QObject::tr("Name of the preset"));
        m_name->setToolTip(QObject::tr("The list of presets shows it above the built-in ones."));
        auto* const buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
        m_keep = buttons->addButton(QObject::tr("&Keep"), QDialogButtonBox::AcceptRole);
        auto* const form = new QFormLayout;
        form->addRow(QObject::tr("Name"), m_name);
        auto* const layout = new QVBoxLayout(this);
        layout->addLayout(form);
        layout->addWidget(m_note);
        layout->addWidget(m_problem);
        layout->addWidget(buttons);
        setMinimumWidth(32 * fontMetrics().horizontalAdvance(u'm'));
        connect(m_name, &QLineEdit::textChanged, this, &NameDialog::look);
        connect(buttons, &QDialogButtonBox::accepted, this, &NameDialog::keep);
        connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
        look();
    }

private:
    std::string name() const { return m_name->text().trimmed().toStdString(); }

    void look()
    {
        m_keep->setEnabled(!name().empty());
        const bool isTaken = std::find(m_taken.begin(), m_taken.end(), name()) != m_taken.end();
        m_note->setText(isTaken ? QObject::tr("Replaces the preset you kept under this name.")
                                : QObject::tr("The numbers of this section as they are now, for "
                                              "this and other crafts."));
        m_problem->format({});
    }

    void keep()
    {
        if (m_problem->display(keepPreset(ownPreset(m_document.setup(), m_kind, name()))))
            accept();
    }

    Document& m_document;
    PresetKind m_kind;
    std::vector<std::string> m_taken;
    QLineEdit* m_name;
    QLabel* m_note;
    ProblemLabel* m_problem;
    QPushButton* m_keep = nullptr;
};

std::vector<std::string> namesOf(const std::vector<OwnPreset>& presets, PresetKind kind)
{
    std::vector<std::string> names;
    for (const OwnPreset& preset : presets)
        if (preset.kind() == kind)
            names.push_back(preset.name);
    return names;
}

}  // namespace

PresetButtons::PresetButtons(Document& document, PresetKind kind, QWidget* parent)
    : QWidget(parent), m_document(document), m_kind(kind), m_problem(new ProblemLabel(this))
{
    auto* const chooseButton = new QPushButton(tr("Choose a preset…"), this);
    chooseButton->setAccessibleName(textOf(kind).choose + QStringLiteral(": ") +
                                    chooseButton->text());
    chooseButton->setToolTip(
        tr("<p>Fills this section with typical numbers, for a start; each says where it is from, "
           "and gives way to your own.</p>"));
    auto* const keepButton = new QPushButton(tr("Keep as preset…"), this);
    keepButton->setAccessibleName(textOf(kind).choose + QStringLiteral(": ") + keepButton->text());
    keepButton->setToolTip(
        tr("<p>Keeps this section's numbers under a name, for this and other crafts.</p>"));
    connect(chooseButton, &QPushButton::clicked, this, &PresetButtons::choose);
    connect(keepButton, &QPushButton::clicked, this, &PresetButtons::keep);
    connect(&document, &Document::setupChanged, m_problem, &QLabel::hide);
    auto* const row = new FlowLayout;
    row->addWidget(chooseButton);
    row->addWidget(keepButton);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(row);
    layout->addWidget(m_problem);
}

void PresetButtons::choose()
{
    const auto entries = [this] {
        const auto own = ownPresets();
        m_problem->display(own ? Result<void>() : tl::unexpected<Error>(own.error()));
        return presetEntries(m_kind, own.value_or(std::vector<OwnPreset>{}));
    };
    const auto forget = [this](const PresetEntry& entry) {
        return forgetPreset(m_kind, entry.ownName);
    };
    const KindText text = textOf(m_kind);
    auto* const dialog =
        new PresetDialog(m_document, {text.choose, text.undoText, entries, forget}, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

void PresetButtons::keep()
{
    const auto own = ownPresets();
    if (!own) {
        m_problem->display(tl::unexpected<Error>(own.error()));
        return;
    }
    auto* const dialog = new NameDialog(m_document, m_kind, namesOf(*own, m_kind), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

PartButtons::PartButtons(Document& document, PartList list, QWidget* parent)
    : QWidget(parent), m_document(document), m_list(list)
{
    auto* const preset = new QPushButton(tr("Add from preset…"), this);
    preset->setToolTip(tr("<p>A battery or a camera by its kind, with typical mass and size.</p>"));
    connect(preset, &QPushButton::clicked, this, [this] {
        open(new PresetDialog(m_document,
                              {tr("Battery or camera"),
                               tr("add a part from a preset"),
                               [list = m_list] { return partEntries(list); },
                               {}},
                              this));
    });
    auto* const plate = new QPushButton(tr("Add a plate…"), this);
    plate->setToolTip(tr("<p>Works out its mass from outline, thickness and material.</p>"));
    connect(plate, &QPushButton::clicked, this,
            [this] { open(new PlateDialog(m_document, m_list, this)); });
    const QString where = list == PartList::Bay ? tr("Bay: %1") : tr("Airframe: %1");
    for (QPushButton* button : {preset, plate})
        button->setAccessibleName(where.arg(button->text()));
    auto* const row = new FlowLayout(this);
    row->addWidget(preset);
    row->addWidget(plate);
}

void PartButtons::open(QDialog* dialog)
{
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, &PartButtons::added);
    dialog->open();
}

}  // namespace stillbay::ui
