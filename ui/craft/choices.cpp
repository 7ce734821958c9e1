// SPDX-License-Identifier: MIT
#include "ui/craft/choices.h"

#include "core/setup/mount_layout.h"
#include "ui/widgets/field_path.h"
#include "ui/widgets/labels.h"

#include <QComboBox>
#include <QObject>
#include <QVBoxLayout>
#include <QWheelEvent>

#include <functional>

namespace stillbay::ui {
namespace {

// A choice between some states of the craft.
struct ChoiceSpec {
    QString path, name, meaning;
    QStringList items;
    std::function<int(const Setup&)> current;
    std::function<QString(int)> undoText;
    std::function<void(Setup&, int)> choose;
};

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

QWidget* choice(Document& document, const ChoiceSpec& spec)
{
    auto* const box = new Choice(spec.name, spec.items);
    box->setToolTip(spec.meaning);
    auto* const refusal = new ProblemLabel;
    const auto show = [&document, box, current = spec.current] {
        box->setCurrentIndex(current(document.setup()));
    };
    show();
    QObject::connect(&document, &Document::setupChanged, box, [show, refusal] {
        refusal->format({});
        show();
    });
    QObject::connect(box, &QComboBox::activated, box, [&document, show, refusal, spec](int index) {
        refusal->display(document.edit(spec.undoText(index), {}, [&](Setup& setup) {
            if (spec.current(setup) != index)
                spec.choose(setup, index);
        }));
        show();
    });
    auto* const whole = new QWidget;
    setFieldPath(*whole, spec.path);
    auto* const layout = new QVBoxLayout(whole);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(box);
    layout->addWidget(refusal);
    return whole;
}

}  // namespace

QWidget* lensChoice(Document& document)
{
    return choice(
        document,
        {.path = QStringLiteral("camera.lens"),
         .name = QObject::tr("Camera: kind of lens"),
         .meaning = QObject::tr("<p>A rectilinear lens keeps straight lines straight; a fisheye "
                                "bends them towards the edges and sees further. It decides how "
                                "many pixels a turn of the camera moves the picture.</p>"),
         .items = {QObject::tr("Lens rectilinear, straight lines stay straight"),
                   QObject::tr("Lens fisheye (equidistant)")},
         .current = [](const Setup& setup) { return setup.camera.lens == Lens::Fisheye ? 1 : 0; },
         .undoText = [](int) { return QObject::tr("change the lens"); },
         .choose =
             [](Setup& setup, int index) {
                 setup.camera.lens = index == 1 ? Lens::Fisheye : Lens::Rectilinear;
             }});
}

QWidget* endsChoice(Document& document)
{
    return choice(
        document,
        {.path = QStringLiteral("mounts.ends"),
         .name = QObject::tr("Mounts: how the tube ends are held"),
         .meaning = QObject::tr("<p>Clamped ends sit tight in a collar or over a peg and cannot "
                                "turn; hinged ends hang on a ring or a pin and turn freely.</p>"),
         .items = {QObject::tr("Ends clamped, held square"),
                   QObject::tr("Ends hinged, free to turn")},
         .current = [](const Setup& setup) { return setup.mounts.ends == Ends::Clamped ? 0 : 1; },
         .undoText = [](int) { return QObject::tr("change how the ends are held"); },
         .choose =
             [](Setup& setup, int index) {
                 setup.mounts.ends = index == 0 ? Ends::Clamped : Ends::Hinged;
             }});
}

QWidget* anchorChoice(Document& document)
{
    return choice(
        document,
        {.path = QStringLiteral("mounts.points"),
         .name = QObject::tr("Mounts: planned or drilled"),
         .meaning =
             QObject::tr("<p>While planning, the anchor lies along the angles at free length × "
                         "stretch. Once drilled, the holes stay and decide each tube's "
                         "stretch.</p>"),
         .items = {QObject::tr("Planned: anchors follow the angles"),
                   QObject::tr("Drilled: the holes stay")},
         .current = [](const Setup& setup) { return setup.mounts.drilled() ? 1 : 0; },
         .undoText =
             [](int index) {
                 return index == 1 ? QObject::tr("drill the holes") : QObject::tr("plan by angles");
             },
         .choose =
             [](Setup& setup, int index) {
                 setup.mounts = index == 1 ? drilled(setup.mounts) : planned(setup.mounts);
             }});
}

}  // namespace stillbay::ui
