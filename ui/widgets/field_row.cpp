// SPDX-License-Identifier: MIT
#include "ui/widgets/field_row.h"

#include "core/setup/sources.h"
#include "ui/widgets/field_path.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/source_text.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QToolButton>

#include <utility>

namespace stillbay::ui {

FieldRow::FieldRow(Document& document, FieldSpec spec, const QString& noneWord, double start,
                   QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_spec(std::move(spec)),
      m_noneWord(noneWord),
      m_start(start),
      m_label(new QLabel(this)),
      m_mark(new QuietLabel({}, this)),
      m_editor(new QWidget(this)),
      m_boxRow(new QHBoxLayout),
      m_refusal(new ProblemLabel(this))
{
    setFieldPath(*this, m_spec.path);
    const bool wide = m_spec.list || !m_spec.entryNames.isEmpty();  // boxes below the label
    m_label->setText(wide && !m_spec.unit.isEmpty()
                         ? QStringLiteral("%1 (%2)").arg(m_spec.label, m_spec.unit)
                         : m_spec.label);
    m_label->setWordWrap(true);
    m_mark->setWordWrap(false);
    auto* const name = new QHBoxLayout;
    name->setSpacing(6);
    name->addWidget(m_label, wide ? 0 : 1);
    name->addWidget(m_mark);
    if (wide)
        name->addStretch();
    m_boxRow->setContentsMargins(0, 0, 0, 0);
    m_boxRow->setSpacing(4);
    auto* const editorLayout = new QVBoxLayout(m_editor);
    editorLayout->setContentsMargins(0, 0, 0, 0);
    editorLayout->setSpacing(2);
    editorLayout->addLayout(m_boxRow);
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setVerticalSpacing(2);
    grid->addLayout(name, 0, 0, 1, wide ? 2 : 1);
    grid->addWidget(m_editor, wide ? 1 : 0, wide ? 0 : 1, 1, wide ? 2 : 1);
    grid->addWidget(m_refusal, 2, 0, 1, 2);
    grid->setColumnStretch(0, 9);
    grid->setColumnStretch(1, 11);

    makeBoxes();
    if (!m_noneWord.isEmpty()) {
        m_none = new QCheckBox(m_noneWord, m_editor);
        m_none->setAccessibleName(tr("%1, %2").arg(m_spec.spoken, m_noneWord));
        editorLayout->addWidget(m_none);
        connect(m_none, &QCheckBox::toggled, this, [this](bool none) { setGiven(!none); });
    }
    if (m_spec.list)
        makeListButtons();
    connect(&m_document, &Document::setupChanged, this, &FieldRow::follow);
    refresh();
}

QString FieldRow::hover() const
{
    const QLocale locale;
    const QString range =
        tr("Allowed: %1 to %2 %3")
            .arg(locale.toString(m_spec.min), locale.toString(m_spec.max), m_spec.unit)
            .trimmed();
    const Source* const source = sourceOf(m_document.setup(), m_spec.path.toStdString());
    return QStringLiteral("<p>%1</p><p>%2</p>")
               .arg(m_spec.meaning.toHtmlEscaped(), range.toHtmlEscaped()) +
           (source ? sourceText(*source) : QString());
}

QString FieldRow::undoText() const
{
    return tr("change %1").arg(m_spec.spoken);
}

void FieldRow::makeBoxes()
{
    while (QLayoutItem* item = m_boxRow->takeAt(0)) {
        if (item->widget())
            item->widget()->deleteLater();
        delete item;
    }
    m_boxes.clear();
    const std::size_t count = m_spec.count(m_document.setup());
    for (std::size_t index = 0; index < count; ++index)
        makeBox(index);
    if (!m_boxes.empty())
        m_label->setBuddy(m_boxes.front());
    emit remade();
}

void FieldRow::makeBox(std::size_t index)
{
    const auto place = static_cast<qsizetype>(index);
    const bool single = m_spec.entryNames.isEmpty() && !m_spec.list;
    const QString entryName = single        ? QString()
                              : m_spec.list ? QString::number(index + 1)
                                            : m_spec.entryNames[place];
    auto* const box = new NumberBox(m_editor);
    box->setRange(m_spec.min, m_spec.max);
    box->setSingleStep(m_spec.step);
    box->setWhole(m_spec.whole);
    box->setAccessibleName(single ? m_spec.spoken : m_spec.spoken + u' ' + entryName);
    box->setUnit(m_spec.unit, single);
    box->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);  // gives way in a narrow form
    if (!single) {
        box->setButtonSymbols(QAbstractSpinBox::NoButtons);
        if (!m_spec.list)
            m_boxRow->addWidget(new QLabel(entryName, m_editor));
    }
    m_boxRow->addWidget(box, 1);
    m_boxes.push_back(box);
    connect(box, &NumberBox::valueChanged, this, [this, index](double v) { commit(index, v); });
    connect(box, &NumberBox::editingFinished, this, [this] {
        m_document.endGesture();
        if (std::exchange(m_isTyped, false))
            takeForOwn();
    });
    connect(box, &NumberBox::refused, this, [this](const QString& why) {
        m_isTyped = false;
        m_refusal->refuse(why);
    });
    connect(box->findChild<QLineEdit*>(), &QLineEdit::textEdited, this, [this] {
        m_isTyped = true;
        m_refusal->hide();
    });
}

void FieldRow::makeListButtons()
{
    const auto button = [this](const QString& sign, const QString& spoken, int change) {
        auto* const result = new QToolButton(m_editor);
        result->setText(sign);
        result->setAccessibleName(spoken);
        result->setToolTip(spoken);
        connect(result, &QToolButton::clicked, this, [this, change] {
            const std::size_t size = m_spec.count(m_document.setup());
            m_refusal->display(m_document.edit(undoText(), {}, [&](Setup& setup) {
                m_spec.resize(setup, change > 0 ? size + 1 : size - 1);
                dropSource(setup, m_spec.path.toStdString());
            }));
        });
        return result;
    };
    m_fewer = button(QStringLiteral("−"), tr("%1, one fewer").arg(m_spec.spoken), -1);
    m_more = button(QStringLiteral("+"), tr("%1, one more").arg(m_spec.spoken), 1);
    auto* const row = qobject_cast<QBoxLayout*>(m_editor->layout());
    auto* const buttons = new QHBoxLayout;
    buttons->addStretch();
    buttons->addWidget(m_fewer);
    buttons->addWidget(m_more);
    row->addLayout(buttons);
}

FieldRow::Shown FieldRow::newest() const
{
    const Setup& setup = m_document.setup();
    Shown newest;
    for (std::size_t index = 0; index < m_spec.count(setup); ++index)
        newest.values.push_back(m_spec.entry(index).read(setup));
    if (const Source* const source = sourceOf(setup, m_spec.path.toStdString()))
        newest.source = *source;
    return newest;
}

// Of the many rows one at most differs after an edit.
void FieldRow::follow()
{
    m_refusal->hide();
    if (m_shown != newest())
        refresh();
}

void FieldRow::refresh()
{
    m_shown = newest();
    const Setup& setup = m_document.setup();
    const std::size_t count = m_spec.count(setup);
    if (count != m_boxes.size())
        makeBoxes();
    m_refusal->hide();
    bool given = true;
    for (std::size_t index = 0; index < m_boxes.size(); ++index) {
        const std::optional<double> value = m_spec.entry(index).read(setup);
        given = value.has_value();
        if (value || m_estimate)
            m_boxes[index]->show(value ? *value : *m_estimate);
    }
    if (m_spec.optional)
        showWhetherGiven(given);
    if (m_fewer)
        m_fewer->setEnabled(count > 0);
    showSource();
}

// Says beside the label that the value is not the builder's own, and on hover where it is from.
void FieldRow::showSource()
{
    const Source* const source = sourceOf(m_document.setup(), m_spec.path.toStdString());
    const QString mark = source ? sourceMark(*source) : QString();
    m_mark->setText(mark);
    m_mark->setHidden(mark.isEmpty());
    const QString text = hover();
    if (m_label->toolTip() == text)
        return;
    m_label->setToolTip(text);
    m_mark->setToolTip(source ? sourceText(*source) : QString());
    for (NumberBox* box : m_boxes) {
        box->setToolTip(text);
        box->setAccessibleDescription(mark);
    }
    if (m_none)
        m_none->setToolTip(text);
}

void FieldRow::showWhetherGiven(bool given)
{
    const bool single = m_spec.entryNames.isEmpty();
    for (NumberBox* box : m_boxes) {
        box->setVisible(given || m_estimate || !m_none);
        if (box->isReadOnly() == !given)
            continue;
        box->setNoEditor(!given);
        box->setPrefix(given ? QString() : QStringLiteral("≈ "));
        if (single)
            box->setButtonSymbols(given ? QAbstractSpinBox::UpDownArrows
                                        : QAbstractSpinBox::NoButtons);
    }
    if (m_none) {
        const QSignalBlocker quiet(m_none);
        m_none->setChecked(!given);
        m_none->setAccessibleDescription(given || !m_estimate ? QString()
                                                              : m_boxes.front()->text());
    }
}

void FieldRow::setEstimate(std::optional<double> value)
{
    if (m_estimate == value)
        return;
    m_estimate = value;
    refresh();
}

void FieldRow::commit(std::size_t index, double value)
{
    const NumberAccess access = m_spec.entry(index);
    const QString field = QStringLiteral("%1[%2]").arg(m_spec.path).arg(index);
    const auto done = m_document.edit(undoText(), field, [&](Setup& setup) {
        access.write(setup, value);
        dropSource(setup, m_spec.path.toStdString());
    });
    if (done)
        return;
    m_isTyped = false;
    if (const std::optional<double> kept = access.read(m_document.setup()))
        m_boxes[index]->show(*kept);
    m_refusal->display(done);
}

// A typical value that the builder has typed as it is.
void FieldRow::takeForOwn()
{
    const std::string key = m_spec.path.toStdString();
    if (isOwn(m_document.setup(), key))
        return;
    m_refusal->display(m_document.edit(tr("take %1 for your own").arg(m_spec.spoken), {},
                                       [&](Setup& setup) { dropSource(setup, key); }));
}

void FieldRow::setGiven(bool given)
{
    const NumberAccess access = m_spec.entry(0);
    const double start = m_estimate.value_or(m_start);
    const auto done = m_document.edit(undoText(), {}, [&](Setup& setup) {
        access.write(setup, given ? std::optional<double>(start) : std::nullopt);
        dropSource(setup, m_spec.path.toStdString());
    });
    if (done)
        return;
    refresh();
    m_refusal->display(done);
}

}  // namespace stillbay::ui
