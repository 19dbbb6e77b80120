export const messages = {
  photographs: {
    title: 'Photographs',
    none: 'No photograph was kept of this visit.',
    permission:
      'Only with the patient’s permission, and as local rules on health records have it. It is made smaller, and what the camera noted of device, time and place is left out. Clinicians of the case see it, nobody else.',
    picture: 'Photograph',
    caption: 'What it shows',
    captionHint: 'Such as: upper ridge from below; smile with the trial denture.',
    keep: 'Keep it with the visit',
    kept: '{when}, {by}',
    pictureOf: 'Photograph: {caption}',
    remove: 'Take away: {caption}',
    reason: 'Reason; the picture is gone for good, the reason stays on the record',
    removeGo: 'Take it away',
    removed: 'Taken away: {caption}. {when}, {by}: {reason}',
    unreadable: 'This file cannot be read as a picture. Accepted: a photograph as JPEG, PNG or WebP.',
    need: {
      picture: 'Choose a photograph.',
      caption: 'Say what it shows, in up to 200 characters.',
      reason: 'Give a reason of up to 500 characters.',
    },
  },
};
