export const permits = {
  title: "Permits to work",
  purpose:
    "The permits that the work was done under, each valid on its day. Add a row for every further permit, and for every further day where permits are issued by the day.",
  cautions: [
    "This table is a record and no permit. The site's permit system and the local code decide who may work, where and when.",
    "Isolations, earths and keys are as the permit says, and are seen to by its holder before anybody starts.",
  ],
};
