// @ts-check
/** The words of the page as one file: where it is offered, in it, and when it is damaged. */

export const oneFile = {
  name: "farthing.html",
  keep: "keep this page in one file",
  about: "That file has less than 200 KB, and any browser opens it without a network. Your shelf is not in it: save that to a file as well, and bring it back there.",
  gone: "The file did not come: it needs signal, once. Try again when there is some.",
  here: "This page is one file. Send it on as it is: it fetches nothing and sends nothing. What you keep stays in this browser, not in the file: save it to a file before you move or rename this one.",
};

export const damaged = "This copy of the page is damaged: an editor or a mail program changed it on the way. Nothing that you kept is lost. Get the file again: in a zip folder it arrives as it was.";
